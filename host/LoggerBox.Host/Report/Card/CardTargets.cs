using System.Globalization;
using LoggerBox.Host.DataSheets;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report.Card;

/// <summary>One step's line: what the foot does, the speed that the sheet gives with its window, and how long.</summary>
internal sealed class CardTargets(DataSheet sheet, EngineLimits engine, PlanRecord plan)
{
    private static readonly string LongTone = "long tone, " + Display(Cue.Captured);

    public CardStep Of(Step step, int number) => step switch
    {
        Step.Zero => Line(step, number, "engine off", "pressure gone", "until " + Display(Cue.ZeroTaken)),
        Step.IdleNeutral => Line(step, number, "foot off", Speed(engine.IdleRpm), LongTone),
        Step.IdleForward or Step.IdleReverse => Line(step, number, "foot off, then shift", Speed(engine.IdleRpm), LongTone),
        Step.HoldNeutral or Step.HoldForward or Step.HoldReverse => Line(step, number, $"to {Rpm(sheet.HoldRpm)}, hold still", HoldWindow(), LongTone),
        Step.Governed => Line(step, number, "to the floor", Speed(engine.GovernedRpm), LongTone),
        Step.Relief => Line(step, number, "floor, work lever at end", Drop(engine.ReliefDropRpm), $"{SeatTimes.ReliefStopMilliseconds / 1000} s at most"),
        Step.StallForward => Line(step, number, "to the floor", Speed(engine.StallForwardRpm), StallTime()),
        Step.StallReverse => Line(step, number, "to the floor", Speed(engine.StallReverseRpm), StallTime()),
        _ => Line(step, number, "", "", ""),
    };

    /// <param name="hoseTo">The clutch that the hose goes to before the next stall; null where it stays.</param>
    public CardStep CoolDown(Gear? hoseTo) => new(
        null,
        hoseTo is Gear gear ? $"Cool, then {HoseMove(gear)}" : "Cool down, neutral",
        hoseTo is null ? "a little" : "then engine off",
        Range(SeatTimes.CoolDownLowRpm, SeatTimes.CoolDownHighRpm) + " rpm",
        $"{Seconds(plan.CooldownMilliseconds)}, then {Display(Cue.CoolDownOver)}");

    public static CardStep BrakeWheels(Gear? hoseTo) => hoseTo is Gear gear
        ? new CardStep(null, "Wheels stopped, " + HoseMove(gear), "engine off", "pressure gone", "then the hose")
        : new CardStep(null, "Brake the wheels to a stop", "foot off, neutral", "wheels still", "then the other");

    public static CardStep NoReverseStall() => new(null, "NO STALL IN REVERSE", "the sheet forbids it", "", "");

    private static string HoseMove(Gear gear) => $"hose 2 to {(gear == Gear.Forward ? "F" : "R")}";

    private static CardStep Line(Step step, int number, string pedal, string target, string howLong) =>
        new(number, StepWords.Of(step), pedal, target, howLong);

    private string StallTime() => $"{Seconds(plan.StallTargetMilliseconds)}, {Display(Cue.StallStop)} at {Seconds(plan.StallStopMilliseconds)}";

    private string HoldWindow() => Range(sheet.HoldRpm - sheet.HoldWindowRpm, sheet.HoldRpm + sheet.HoldWindowRpm) + " rpm";

    private static string Speed(Limit? limit) => limit switch
    {
        null => "not in the sheet",
        { IsJudged: true } => Figure.Limit(limit.Min, limit.Max, "rpm") + " rpm",
        { Nominal: double reference } => $"about {Rpm(reference)}",
        _ => "not in the sheet",
    };

    private static string Drop(Limit? limit) => limit switch
    {
        null or { IsJudged: false } => "not in the sheet",
        { Min: null, Max: double most } => $"drop max. {Rpm(most)} rpm",
        { Min: double least, Max: null } => $"drop min. {Rpm(least)} rpm",
        _ => $"drop {Figure.Limit(limit.Min, limit.Max, "rpm")} rpm",
    };

    private static string Rpm(double value) => Figure.Of(value, "rpm");

    private static string Range(double low, double high) => $"{Rpm(low)} to {Rpm(high)}";

    private static string Seconds(int milliseconds) => (milliseconds / 1000.0).ToString("0.#", CultureInfo.InvariantCulture) + " s";

    private static string Display(Cue cue) => CueTable.Find(cue)!.Display.Trim();
}
