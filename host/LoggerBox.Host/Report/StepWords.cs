using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>The steps and quantities in the words that are used beside the truck.</summary>
public static class StepWords
{
    public static string Of(string stepCode) => stepCode switch
    {
        "zero" => "Engine off, no pressure",
        "idle-N" => "Idle, neutral",
        "idle-F" => "Idle, forward",
        "idle-R" => "Idle, reverse",
        "governed" => "Full pedal, no load",
        "relief" => "Full pedal, work relief",
        "stall-F" => "Stall, forward",
        "stall-R" => "Stall, reverse",
        "hold-N" => "Hold speed, neutral",
        "hold-F" => "Hold speed, forward",
        "hold-R" => "Hold speed, reverse",
        "idle" => "Idle, in gear",
        "stall" => "Stall, gear unknown",
        "hold" => "Hold speed, in gear",
        "engage-F" => "Engaging forward",
        "engage-R" => "Engaging reverse",
        "engage" => "Engaging, gear unknown",
        _ => stepCode,
    };

    public static string Of(Step step) => Of(StepCodes.Text(step));

    public static string Of(Gear gear) => gear switch
    {
        Gear.Neutral => "neutral",
        Gear.Forward => "forward",
        Gear.Reverse => "reverse",
        _ => "unknown",
    };
}
