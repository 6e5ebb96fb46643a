using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>What the logger signals to the person in the seat, in words; empty where it signals nothing.</summary>
public static class CueWords
{
    public static string Of(Cue cue) => cue switch
    {
        Cue.None or Cue.LinkAlive => "",
        Cue.Captured => "Captured",
        Cue.EngagementCaptured => "Engagement captured",
        Cue.ZeroTaken => "Engine-off reading taken",
        Cue.ZeroAgain => "Take the engine-off reading again",
        Cue.Armed => "Ready for a step",
        Cue.AllCaptured => "All captured, safe to unhook",
        Cue.StepsMissing => "Steps are still missing",
        Cue.SetUpClearOrDown => "Say the set-up: wheels clear or truck down",
        Cue.PlanChosen => "Plan chosen",
        _ => Guard(cue) ?? NotCaptured(cue) ?? Board(cue),
    };

    private static string? Guard(Cue cue) => cue switch
    {
        Cue.StallTarget => "Stall long enough",
        Cue.StallWarn => "End the stall",
        Cue.StallStop => "STOP the stall now",
        Cue.CoolDown => "Cool down in neutral",
        Cue.CoolDownOver => "Cooled down",
        Cue.Overspeed => "STOP: engine too fast",
        Cue.DriveCut => "No clutch pressure under full pedal",
        Cue.PressureTooLowToStall => "Line pressure too low to stall",
        Cue.MainFarTooHigh => "Main pressure far too high",
        Cue.ReliefStop => "Let go of the work lever",
        _ => null,
    };

    private static string? NotCaptured(Cue cue) => cue switch
    {
        Cue.SpeedHigher => "Engine faster",
        Cue.SpeedLower => "Engine slower",
        Cue.NotCapturedTooShort => "Not captured: too short",
        Cue.NotCapturedUnsteady => "Not captured: not steady",
        Cue.NotCapturedSpeed => "Not captured: wrong speed",
        Cue.Borderline => "Captured, close to a limit",
        _ => null,
    };

    private static string Board(Cue cue) => cue switch
    {
        Cue.LoopFault => "A pressure line's current is out of its band",
        Cue.StoreFull => "Card full: recording has stopped",
        Cue.StoreFailed => "Card failed",
        Cue.LowSupply => "Battery low",
        Cue.GearInputsBoth => "Selector says forward and reverse at once",
        Cue.ReadingsLost => "Readings lost",
        Cue.ClockNotSet => "Clock not set",
        Cue.SettingsDamaged => "Settings damaged",
        Cue.Restarted => "Logger restarted",
        _ => $"Signal {(int)cue}",
    };
}
