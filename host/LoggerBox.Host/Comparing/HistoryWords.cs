using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Comparing;

/// <summary>How a place in a data sheet is said, and in which unit its reading is shown.</summary>
public static class HistoryWords
{
    /// <returns>Words, unit, and the factor from the reading's own unit (kPa, rpm, s).</returns>
    public static (string Words, string Unit, double Scale) Of(string place, PressureUnit unit)
    {
        (string step, string quantity) = PlaceOf(place.Split('.'));
        string words = step.Length == 0 ? Words.Quantity(quantity) : $"{StepWords.Of(step)}: {Words.Quantity(quantity)}";
        return quantity switch
        {
            "rpm" or "rpm-drop" => (words, "rpm", 1),
            "run-up-time" or "engagement-time" => (words, "s", 1),
            _ => (words, unit.Code(), 1000 / unit.InPascal()),
        };
    }

    /// <summary>A sheet's place as the step and the reading that the report names.</summary>
    private static (string Step, string Quantity) PlaceOf(string[] parts) => parts switch
    {
        ["engine", "idle_rpm"] => ("idle-N", "rpm"),
        ["engine", "governed_rpm"] => ("governed", "rpm"),
        ["engine", "relief_drop_rpm"] => ("relief", "rpm-drop"),
        ["engine", "stall_forward_rpm"] => ("stall-F", "rpm"),
        ["engine", "stall_reverse_rpm"] => ("stall-R", "rpm"),
        ["engine", "run_up_s"] => ("governed", "run-up-time"),
        ["pressure", var condition, var gear, var channel] => ($"{condition}-{Letter(gear)}", channel),
        ["engagement", var gear] => ("engage-" + Letter(gear), "engagement-time"),
        ["difference", ..] => ("hold", "difference-clutch"),
        _ => ("", string.Join(' ', parts)),
    };

    private static string Letter(string gear) => gear[..1].ToUpperInvariant();

    public static string Verdict(ReadingHistory history) => (history.Changed, history.Drifts) switch
    {
        (true, true) => "changed, drifts",
        (true, false) => "changed",
        (false, true) => "drifts",
        _ => "",
    };
}
