using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>
/// Every sentence of a judgement, in plain trade words: what was seen, with the figure and the limit, and what to do next. Nothing else
/// in a judgement's text is written anywhere else; names of steps, channels and units are in <see cref="Words"/>.
/// </summary>
public static class Sentences
{
    public static IReadOnlyList<NotCovered> NotCovered { get; } =
    [
        new("stator-seized", "A stator's one-way clutch that is seized stalls normally; the truck lacks top speed and overheats.", "Compare top speed and full-throttle speed in gear with the drive wheels clear; watch how fast the oil heats while driving."),
        new("brake-dragging", "A dragging service or parking brake loads the truck, not the test.", "Let the truck roll freely or tow it with a pull gauge; compare hub temperatures after a drive."),
        new("axle-fault", "Differential, reduction gears and wheel bearings lie behind what is measured.", "With the drive wheels clear, turn each by hand, listen, and check the axle oil for metal."),
        new("lubrication-starved", "Lubrication flow has no gauge in this test.", "Gauge the lubrication port at the speed the manual names; check the cooler return flow."),
        new("clutch-dragging", "A clutch that does not release drags in neutral and heats; pressures and stall look normal.", "In neutral with the drive wheels clear and at fast idle, see whether they turn or resist the brake."),
        new("wrong-fluid", "Oil of the wrong kind can hold pressure and still make plates slip or chatter.", "Ask what was filled in and when; compare look and smell with fresh oil of the kind the manual names."),
    ];

    // What was not done right, what is missing, what bears on the readings.
    public static string OutsideSpeedWindow(Step step, double rpm, DataSheet sheet) =>
        $"{Words.Capital(Words.StepName(step))} was at {Words.Rpm(rpm)}, outside {Words.Rpm(sheet.HoldRpm)} plus or minus {Words.Rpm(sheet.HoldWindowRpm)}: its pressures are not judged. Hold the speed again.";

    public static string NotAtRest(Step step, IEnumerable<string> changes) =>
        $"Not quite at rest at {Words.StepName(step)}: {string.Join(", ", changes)}. What is shown is the middle, and its uncertainty holds the change. If it must be closer, hold longer with a steady foot.";

    public static string Changes(int channel, bool falls, string change) =>
        $"{Words.ChannelName(channel).ToLowerInvariant()} {(falls ? "fell" : "rose")} by {change} a second";

    public static string DriveCut(Step step) =>
        $"No clutch pressure under full pedal at {Words.StepName(step)}: the brake may work the inching valve, or an interlock cut the drive. Hold the truck with the parking brake and repeat it.";

    public static string EngineCranked(Step step, double rpm) =>
        $"At {Words.StepName(step)} the engine turned at {Words.Rpm(rpm)}: it was cranked, or about to die. Its pressures are not judged. See why it does not run before anything else is measured.";

    public static string MorePlacesDamaged(int places) => $"{places} more places of the recording are damaged: fetch the session again, or record it again.";

    public static string SamplesOfHoldLost(Step step) =>
        $"{Words.Capital(Words.StepName(step))} was measured by the logger while it recorded; samples of it were lost since, so its curve has a hole.";

    public static string SeenOnce(Step step) =>
        $"The step {Words.StepName(step)} was seen once, and the recording does not say in which gear: some causes cannot be seen without the other gear.";

    public static string StepMissing(Step step) => $"The step {Words.StepName(step)} is missing: some causes cannot be seen without it.";

    public static string StepVoid(Step step) => $"The step {Words.StepName(step)} is void: some causes cannot be seen without it.";

    public static string ChannelsMissing(IEnumerable<string> channels, Step step) => $"{Words.Capital(string.Join(", ", channels).ToLowerInvariant())} not measured at {Words.StepName(step)}: some causes cannot be seen without it.";

    /// <summary>Before a sentence on one of several recordings; nothing where there is one.</summary>
    public static string InRecording(int index, int count) => count == 1 ? "" : $"Recording {index + 1} of {count}: ";

    public static string ZeroOffset(string channel, double pascal, PressureUnit unit) =>
        $"{channel} read {Words.Pressure(pascal, unit)} with the engine off; this was subtracted.";

    public static string ZeroDrift(string channel, double pascal, PressureUnit unit) =>
        $"{channel} read {Words.Pressure(Math.Abs(pascal), unit)} {(pascal < 0 ? "less" : "more")} with the engine off at the end than at the start; this widens its uncertainty.";

    public static string OilUnknown() =>
        "Oil temperature is neither in the recording nor on the work order: cold oil raises pressures and hides leaks. Write it down.";

    public static string OilHot(double celsius, double limit) => $"Oil at {celsius:0} °C, above the sheet's {limit:0} °C: pressures sag when it is thin.";

    public static string LoopOpen(string channel, double seconds, IReadOnlyList<Step> steps) =>
        $"{channel}: no current in its loop (3.6 mA or less) from {seconds:0} s on, {At(steps)}: a wire is broken, a plug is off, or the supply is gone. Put it right and repeat what is missing.";

    public static string LoopShorted(string channel, double seconds, IReadOnlyList<Step> steps) =>
        $"{channel}: too much current in its loop (21 mA or more) from {seconds:0} s on, {At(steps)}: the cable is shorted or the transducer has failed. Put it right and repeat what is missing.";

    public static string LoopOutOfRange(string channel, Step step) =>
        $"{channel} was at the end of its transducer's range at {Words.StepName(step)} (20.5 mA or more, or less than 3.8 mA): it may be any pressure beyond. Fit a transducer of larger range and repeat the step.";

    public static string LimitsDrawnFromJobs(string jobs) =>
        $"The limits were drawn from the shop's own healthy jobs {jobs}, they are not the manual's: outside means unlike those trucks. Look the manual up before anything is taken apart.";

    public static string OilCold(double celsius, double least, bool isSheets) =>
        $"Oil at {celsius:0} °C, below {(isSheets ? "the sheet's" : "the usual")} {least:0} °C: cold oil raises pressures, slows engagements and hides leaks, so limits that are kept prove nothing. Warm the truck up and repeat the test.";

    public static string StallTooLong(Step step, double seconds, double limit) =>
        $"{Words.Capital(Words.StepName(step))} was held for {seconds:0.0} s, longer than {limit:0} s: the oil heats fast, and speed and pressures sag. Cool down in N and hold the next one shorter.";

    public static string StallReadTooLate(Step step, double seconds, double limit) =>
        $"{Words.Capital(Words.StepName(step))} came to rest only {seconds:0.0} s after the speed was there, later than {limit:0} s: by then the oil is too hot to judge by. Cool down in N and repeat it, full pedal at once and no longer than {limit:0} s.";

    public static string StallNeverAtRest(Step step, double limit) =>
        $"{Words.Capital(Words.StepName(step))} was held until the logger called to stop, {limit:0} s or more, and never came to rest: nothing of it is judged. See that the truck stands still, cool down in N, and repeat it.";

    public static string CoolDownShort(Step before, Step step, double seconds, double wanted) =>
        $"Only {seconds:0} s between {Words.StepName(before)} and {Words.StepName(step)}, less than {wanted:0} s: the oil was still hot from the one before. Cool down in N for {wanted:0} s between stalls.";

    public static string StallALittleHigh(double forward, double reverse, double most) =>
        $"Stall in F {Words.Rpm(forward)} and in R {Words.Rpm(reverse)}, at most {Words.Rpm(most)}: high in both directions alike is a guide, and no finding alone. Chalk the tyres to see that the truck stands still, check the oil level, read the speed with a second tachometer, and repeat before anything is opened.";

    public static string FuelUnknown(IEnumerable<string> fuels, IReadOnlyList<string> differing) =>
        $"The data sheet has figures by fuel ({string.Join(", ", fuels)}), and nobody wrote down what the truck ran on: not judged {string.Join(", ", differing)}. Write the fuel on the work order and judge again.";

    /// <param name="mayRepeat">False for a stall that would destroy what is suspected.</param>
    public static string TooCloseToCall(IReadOnlyList<Check> checks, bool mayRepeat) =>
        $"Too close to a limit to call: {string.Join(", ", checks.Select(CheckedReading))}. {(mayRepeat ? "Repeat it once; the last good try counts." : "Do NOT stall again.")}";

    public static string NoMoreStalls(IEnumerable<string> reasons) =>
        $"Do NOT stall again: {string.Join("; ", reasons)}. Slipping plates destroy themselves. This comes before every advice to repeat a stall: put it right first.";

    public static string IdlePressureLow(Check main) => $"{CheckedReading(main)} at idle is low";

    public static string WarnedOfLowPressure() => "the logger warned that line pressure is too low to stall";

    public static string ClutchSuspected() => "a clutch or its feed is suspected";

    public static string LoggerWarned(IEnumerable<string> warnings) => $"The logger warned: {string.Join("; ", warnings)}.";

    public static string Warning(Cue cue, double seconds, int times, int stalls) =>
        $"{Words.Guard(cue)} ({(times == 1 ? "" : $"{times} times, first ")}at {seconds:0} s{(stalls == 0 ? "" : $", and {stalls} {(stalls == 1 ? "stall" : "stalls")} after it")})";

    public static string EngagementCut(Gear gear, double seconds) =>
        $"The {(gear == Gear.Reverse ? "reverse" : "forward")} clutch had not settled when the lever or the pedal moved: it takes {Words.Seconds(seconds)} at least. Leave it in gear at idle for ten seconds and look again.";

    public static string EngagementAboveIdle(Gear gear, double rpm) =>
        $"The lever went into {(gear == Gear.Reverse ? "reverse" : "forward")} at {Words.Rpm(rpm)}: that filling is not judged, a pump that turns faster fills faster. Shift at idle and leave it in gear for ten seconds.";

    public static string ZeroReadOnce() =>
        "Zero was read only once: whether a channel moved while it got warm is not known. Stop the engine, wait until the pressure is gone, and read zero again.";

    public static string GivenUp(Step step, double rpm, double seconds) =>
        $"{Words.Capital(Words.StepName(step))} was tried at {Words.Rpm(rpm)} and given up after {seconds:0.0} s, too short for a reading. Keep the pedal where it is until the speed has stood for five seconds.";

    public static string NeverAtRest(Step step, double from, double to, double seconds) =>
        $"{Words.Capital(Words.StepName(step))} was tried for {seconds:0.0} s and never stood: the speed went from {Words.Rpm(from)} to {Words.Rpm(to)}. Chalk a tyre: if the truck crept or a wheel spun, hold it better and repeat.";

    public static string Unsteady(Step step, double least, double most, double seconds) =>
        $"{Words.Capital(Words.StepName(step))} was tried for {seconds:0.0} s and never stood: the speed went up and down between {Words.Rpm(least)} and {Words.Rpm(most)}. Repeat it with a steady foot; if the foot was steady, the governor hunts.";

    public static string HalfAPedal(Step step, double rpm, double seconds, double expected) =>
        $"{Words.Rpm(rpm)} for {seconds:0} s is no {Words.StepName(step)} of this truck ({Words.Rpm(expected)} expected): taken for warming up or driving. A stall goes from idle to the floor at once and lasts five seconds.";

    public static string SessionCut() => "The recording ends without being closed: supply or card was lost. What was stored before is judged.";

    public static string SamplesLost(int gaps, double seconds) => $"{gaps} gaps without samples, {seconds:0.0} s together.";

    public static string AirThin(double torqueLoss, double stallDrop) =>
        $"At this altitude and air temperature a sound engine that breathes freely gives about {torqueLoss * 100:0} % less torque, and stalls up to {stallDrop * 100:0} % lower. Nothing was corrected for it.";

    private static string At(IReadOnlyList<Step> steps) => steps.Count == 0 ? "between the steps" : "at " + string.Join(", ", steps.Select(Words.StepName));

    private static string CheckedReading(Check check)
    {
        string format = Words.FormatOf(check.Unit);
        string unit = PressureUnits.TryParse(check.Unit, out PressureUnit pressure) ? Words.Name(pressure) : check.Unit;
        string value = (check.Value ?? 0).ToString(format, CultureInfo.InvariantCulture);
        return $"{Words.Quantity(check.Quantity)} {value} {unit} ({Words.Bounds(check.Min, check.Max, format, unit)})";
    }

    // What a reading says, without its full stop: the level follows.
    public static string Reading(string name, string value, string unit, string bounds) => $"{name} {value} {unit} ({bounds})";

    public static string ReadingName(string channel, string step) => $"{channel} at {step}";

    public static string Level(string reading, Level level) => $"{reading}: {Words.LevelName(level)}.";

    public static string NormalAgainst(string reading) => $"{reading}: normal, and this cause moves it.";

    public static string Unexplained(string reading, Level level) => $"{reading}: {Words.LevelName(level)}, which this cause does not explain.";

    public static string IdleSags(string step, double rpm, double least) => $"{Words.Capital(step)} {Words.Rpm(rpm)} (in N at least {Words.Rpm(least)})";

    public static string TwoStalls(string first, double one, string second, double other) => $"{Words.Capital(first)} {Words.Rpm(one)}, {second} {Words.Rpm(other)}";

    public static string TwoEngagements(double forward, double reverse) => $"Engagement of F {Words.Seconds(forward)}, of R {Words.Seconds(reverse)}";

    public static string AgainstNeutral(string channel, string step, Measured reading, Measured neutral, double relative, PressureUnit unit) =>
        $"{channel} at {step} {Words.Pressure(reading, unit)}, in N at the same speed {Words.Pressure(neutral, unit)} ({Words.Percent(relative)})";

    public static string TwoSteps(string channel, string first, Measured one, string second, Measured other, PressureUnit unit) =>
        $"{channel} at {first} {Words.Pressure(one, unit)}, at {second} {Words.Pressure(other, unit)}";

    public static string TwoSpeeds(string channel, Measured slow, string where, Measured fast, string there, PressureUnit unit) =>
        $"{channel} {Words.Pressure(slow, unit)} at {where} and {Words.Pressure(fast, unit)} at {there}";

    public static string ClutchWithMain(Measured clutch, Measured main, string step, PressureUnit unit) =>
        $"Clutch pressure {Words.Pressure(clutch, unit)} with main at {Words.Pressure(main, unit)} at {step}";

    public static string Scatter(double part) => $"Pressure scatters by {part * 100:0.0} % while it should stand still";

    public static string NeverFilled(Gear gear) => $"The {(gear == Gear.Forward ? "forward" : "reverse")} clutch never filled";

    // Faults of the measuring.
    public static string PickupRatio(string step, double rpm, double ratio) => $"{step} {Words.Rpm(rpm)}, {ratio:0.00} of what the sheet says.";

    public static string PickupScale(string ratio) => $"All by about the same ratio: the shown speed is {ratio} times the true one.";

    public static string PickupScalePossible(double ratio, int over, int under) =>
        $"All by the same ratio {ratio:0.000}, and idle allows it: the shown speed may be {over}/{under} of the true one, as with teeth counted wrongly. A second tachometer tells it from governor and engine.";

    public static string ZeroShifted(string channel, double pascal, double largest, PressureUnit unit) =>
        $"{channel} reads {Words.Pressure(pascal, unit)} with the engine off; nothing beyond {Words.Pressure(largest, unit)} either way is usual.";

    public static string ZeroMoved(string channel, double pascal, double largest, PressureUnit unit) =>
        $"{channel} moved by {Words.Pressure(pascal, unit)} with the engine off between start and end; nothing beyond {Words.Pressure(largest, unit)} either way is usual.";

    public static string TagsContradicted(int pressed, int neutral, int empty, int inGear) =>
        $"Clutch pressure stands in {pressed} of {neutral} holds tagged N and is missing in {empty} of {inGear} tagged F or R.";

    public static string OtherLineEmpties(string line, Measured reading, Measured clutch, PressureUnit unit) =>
        $"With the engine running the {line} line reads {Words.Pressure(reading, unit)} while the clutch line reads {Words.Pressure(clutch, unit)}: only a clutch empties, so the clutch and {line} lines are exchanged.";

    public static string OtherLineEmptiesInNeutral(string line, Measured reading, Measured clutch, PressureUnit unit) =>
        $"In N the {line} line reads {Words.Pressure(reading, unit)} and the clutch line {Words.Pressure(clutch, unit)}: the clutch and {line} lines are exchanged.";

    public static string ConverterAboveMain(Measured converter, Measured main, PressureUnit unit) =>
        $"The converter line reads {Words.Pressure(converter, unit)} with main at {Words.Pressure(main, unit)}, and main feeds the converter: the two lines are exchanged.";

    /// <summary>The cheapest check that separates a cause from its neighbours. The truck's manual and the shop's safety rules come first.</summary>
    public static string NextCheck(Cause cause) => cause switch
    {
        Cause.EnginePowerLow => "With a helper on the pedal see whether throttle or rack reach their stop; then air cleaner off and test again; then vacuum, compression, spark or injection.",
        Cause.EngineLimitedByControl => "Read the fault lamp and the stored codes first; then see whether throttle or rack reach their stop.",
        Cause.GovernorLow => "With a helper on the pedal see first that throttle or rack reach their stop; then set the no-load governed speed after the manual and read it again with a second tachometer.",
        Cause.GovernorHigh => "Set the no-load governed speed after the manual and read it again with a second tachometer.",
        Cause.GovernorDroop => "Gauge the work hydraulics' relief pressure: if it is right, the governor's droop is wrong.",
        Cause.WorkReliefHigh or Cause.WorkReliefLow => "Gauge the work hydraulics' relief pressure at the test port and compare it with the manual.",
        Cause.WorkHydraulicsLoading => "Gauge the work pump's pressure with all levers in neutral: it should be only the return's few bar; feel for a hot valve or hose.",
        Cause.OilLowOrAerated => "Check level and look for foam at operating temperature; then the suction side for drawn air.",
        Cause.StrainerRestricted => "Pull and look at the suction strainer; main that falls as speed rises and worse when cold points to it.",
        Cause.PumpWorn => "Compare main at idle hot and cold and the converter's inlet with its outlet; then measure the pump's flow at the speed the manual names.",
        Cause.RegulatorLow => "Take out the main regulator's spool and spring and look; then measure pump flow to tell it from a large leak ahead of it.",
        Cause.RegulatorHigh => "Take out the main regulator's spool: it should fall by its own weight when oiled.",
        Cause.ModulatorSlow or Cause.ModulatorHarsh => "Clean and look at the modulator's orifice, piston and spring; bleed the gauge hose and repeat the engagement.",
        Cause.ModulatorLow => "Disconnect the inching link: if clutch pressure stays low, open the modulator.",
        Cause.InchingNotReleased => "Disconnect the inching link: if clutch pressure jumps up, adjust the link.",
        Cause.ForwardClutchLeak => "Regulated shop air, at the manual's pressure, into the forward clutch port with the engine off: listen and compare with the reverse side.",
        Cause.ReverseClutchLeak => "Regulated shop air, at the manual's pressure, into the reverse clutch port with the engine off: listen and compare with the forward side.",
        Cause.BothClutchesLeak => "Read main in N again: normal there clears pump and regulator; then the selector valve's body and gasket.",
        Cause.ForwardFeedOpen => "Shop air into the forward clutch port: air that rushes through without any build-up is an open passage.",
        Cause.ReverseFeedOpen => "Shop air into the reverse clutch port: air that rushes through without any build-up is an open passage.",
        Cause.ForwardClutchSlip => "Chalk tyre and drive shaft: if neither turns in a stall in F the forward clutch slips; if the tyre spins, repeat on better ground.",
        Cause.ReverseClutchSlip => "Chalk tyre and drive shaft: if neither turns in a stall in R the reverse clutch slips; if the tyre spins, repeat on better ground.",
        Cause.SelectorNotEngaged => "See that the lever reaches its detent and moves the spool (or that the solenoid gets voltage) in that direction.",
        Cause.DriveInputBroken => "Look through the housing whether the converter turns with the engine and the input shaft with the converter.",
        Cause.StatorSlipping => "Run-up in N and drop over relief normal clear the engine; a truck that pulls badly from standstill and well at speed confirms the stator.",
        Cause.ConverterReliefOpen => "Compare converter inlet with outlet, and main at idle with the sheet; then look at the converter relief.",
        Cause.ConverterReliefClosed => "Gauge converter inlet and outlet: both high is the cooler or return, inlet alone the relief.",
        Cause.CoolerRestricted => "Measure the pressure drop over the cooler and how long it takes to cool down after a stall.",
        Cause.LubePlugMissing => "Gauge the lubrication port: low there with a good converter relief points to an open drilling.",
        Cause.PickupScale => "Read the engine with a second tachometer at idle and at governed speed; correct the pulses per revolution.",
        Cause.PressureZeroShift => "Exchange two transducers and read again with the engine off: the fault follows the sensor or stays with the line.",
        Cause.PressureLinesSwapped => "Follow each hose from port to transducer with the engine off and pressure gone; repeat idle in N.",
        Cause.GearTagWrong => "Watch the gear display while a helper moves the lever; correct the tag's wiring or the marks.",
        Cause.OilCold => "Warm the oil to the sheet's temperature and repeat the test before anything is opened.",
        _ => "Compare with a sound truck of the same kind on the same site before the engine is blamed; a reading is never corrected for air.",
    };
}
