using System;
using System.Globalization;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>Readings and steps as a technician says them; numbers with as many decimals as the unit deserves.</summary>
public static class Words
{
    public static string Rpm(double rpm) => rpm.ToString("0", CultureInfo.InvariantCulture) + " rpm";

    public static string Seconds(double seconds) => seconds.ToString("0.00", CultureInfo.InvariantCulture) + " s";

    public static string Percent(double fraction) => (fraction * 100).ToString("+0;-0;0", CultureInfo.InvariantCulture) + " %";

    public static string Pressure(double pascal, PressureUnit unit) =>
        (pascal / unit.InPascal()).ToString(Format(unit), CultureInfo.InvariantCulture) + " " + Name(unit);

    /// <summary>It is printed as more than nothing.</summary>
    public static bool Shows(double pascal, PressureUnit unit) => (pascal / unit.InPascal()).ToString(Format(unit), CultureInfo.InvariantCulture).AsSpan().Trim("-0.").Length > 0;

    public static string Name(PressureUnit unit) => unit.Printed();

    public static string ChannelName(int channel) => channel switch
    {
        Channel.Speed => "Engine speed",
        Channel.Main => "Main pressure",
        Channel.Clutch => "Clutch pressure",
        _ => "Converter pressure",
    };

    /// <summary>A check's quantity as it is read out.</summary>
    public static string Quantity(string code) => code switch
    {
        "rpm" => "engine speed",
        "rpm-drop" => "speed drop",
        "run-up-time" => "run-up time",
        "main" => "main pressure",
        "clutch" => "clutch pressure",
        "converter" => "converter pressure",
        "engagement-time" => "engagement time",
        "difference-clutch" => "clutch, forward to reverse",
        _ => code.Replace('-', ' '),
    };

    /// <summary>As a trace file and a judgement have it; null where the gear is not known.</summary>
    public static string? GearCode(Gear gear) => gear switch
    {
        Gear.Neutral => "N",
        Gear.Forward => "F",
        Gear.Reverse => "R",
        _ => null,
    };

    public static string StepName(Step step) => step switch
    {
        Step.Zero => "engine off",
        Step.IdleNeutral => "idle in N",
        Step.IdleForward => "idle in F",
        Step.IdleReverse => "idle in R",
        Step.Governed => "governed speed",
        Step.Relief => "full pedal over relief",
        Step.StallForward => "stall in F",
        Step.StallReverse => "stall in R",
        Step.HoldNeutral => "the hold in N",
        Step.HoldForward => "the hold in F",
        Step.HoldReverse => "the hold in R",
        Step.IdleInGear => "idle in gear",
        Step.StallInGear => "stall",
        Step.HoldInGear => "the hold in gear",
        _ => "an unnamed hold",
    };

    /// <summary>Where a recording does not say in which gear: F stands for the worse of the two.</summary>
    public static string StepNameOfSomeGear(Step step) => step switch
    {
        Step.IdleForward => "idle in one gear",
        Step.IdleReverse => "idle in the other gear",
        Step.StallForward => "stall in one gear",
        Step.StallReverse => "stall in the other gear",
        Step.HoldForward => "the hold in one gear",
        Step.HoldReverse => "the hold in the other gear",
        _ => StepName(step),
    };

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    public static string Bounds(double? min, double? max, string format, string unit) => (min, max) switch
    {
        ({ } low, { } high) => $"limits {low.ToString(format, CultureInfo.InvariantCulture)} to {high.ToString(format, CultureInfo.InvariantCulture)} {unit}",
        ({ } low, null) => $"at least {low.ToString(format, CultureInfo.InvariantCulture)} {unit}",
        (null, { } high) => $"at most {high.ToString(format, CultureInfo.InvariantCulture)} {unit}",
        _ => "no limit given",
    };

    public static string LevelName(Level level) => level switch
    {
        Level.VeryLow => "very low",
        Level.Low => "low",
        Level.High => "high",
        Level.VeryHigh => "very high",
        _ => "normal",
    };

    public static string Format(PressureUnit unit) => unit switch
    {
        PressureUnit.Psi => "0.0",
        PressureUnit.Kilopascal => "0",
        _ => "0.00",
    };

    public static string Pressure(Measured reading, PressureUnit unit) => Pressure(reading.Value, unit);

    /// <summary>How many places a checked value deserves, by the unit's code.</summary>
    public static string FormatOf(string unitCode) => unitCode switch
    {
        "rpm" => "0",
        "s" => "0.00",
        _ => PressureUnits.TryParse(unitCode, out PressureUnit unit) ? Format(unit) : "0.##",
    };

    /// <summary>What a guard of the logger says.</summary>
    public static string Guard(Cue cue) => cue switch
    {
        Cue.PressureTooLowToStall => "line pressure too low to stall",
        Cue.MainFarTooHigh => "main pressure far too high",
        Cue.Overspeed => "engine too fast",
        Cue.StallStop => "a stall lasted too long",
        Cue.DriveCut => "no clutch pressure under full pedal",
        _ => "a guard",
    };
}
