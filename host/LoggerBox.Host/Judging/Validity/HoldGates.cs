using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>What makes a single hold unfit to judge.</summary>
public static class HoldGates
{
    public const string SpeedWindow = "speed-window";
    public const string DriveCut = "drive-cut";

    /// <summary>Clutch pressure under this part of the main pressure is no pressure at all.</summary>
    public const double EmptyClutch = 0.12;

    public static IReadOnlyDictionary<MeasuredHold, string> Voids(IReadOnlyList<MeasuredHold> holds, IReadOnlyList<StallRun> stalls, DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(holds);
        ArgumentNullException.ThrowIfNull(sheet);
        var voids = new Dictionary<MeasuredHold, string>(ReferenceEqualityComparer.Instance);
        var late = new HashSet<MeasuredHold>(StallNotes.Late(stalls, sheet), ReferenceEqualityComparer.Instance);
        foreach (var hold in holds)
        {
            if (MissesWindow(hold, sheet))
            {
                voids.Add(hold, SpeedWindow);
            }
            else if (IsStall(hold.Step) && ClutchIsEmpty(hold))
            {
                voids.Add(hold, DriveCut);
            }
            else if (late.Contains(hold))
            {
                voids.Add(hold, StallNotes.TooLong);
            }
        }

        return voids;
    }

    public static bool IsStall(Step step) => step is Step.StallForward or Step.StallReverse or Step.StallInGear;

    public static bool ClutchIsEmpty(MeasuredHold hold)
    {
        if (hold.Clutch is not { } clutch)
        {
            return false;
        }

        // Without a main reading the clutch's own uncertainty and the usual return-spring pressure decide. A reading that jumped about
        // says nothing of the kind.
        double full = hold.Main?.Value ?? 300_000;
        return clutch.Expanded < full / 2 && clutch.Value < Math.Max(EmptyClutch * full, clutch.Expanded);
    }

    public static IEnumerable<ValidityNote> Notes(StepReadings steps, DataSheet sheet, IEnumerable<EventRecord> events)
    {
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(sheet);
        var told = new HashSet<Step>();
        foreach (var hold in steps.All.Reverse())
        {
            if (steps.VoidCode(hold) is { } code && steps.Good(hold.Step) is null && told.Add(hold.Step))
            {
                yield return new ValidityNote(code, ValidityEffect.Void, hold.Step, Text(code, hold, steps, sheet));
            }
        }

        foreach (var cut in events.Where(e => e.Kind == EventKind.DriveCut))
        {
            var step = (Gear)cut.Value == Gear.Reverse ? Step.StallReverse : Step.StallForward;
            if (steps.Good(step) is null && told.Add(step))
            {
                yield return new ValidityNote(DriveCut, ValidityEffect.Void, step, Sentences.DriveCut(step));
            }
        }
    }

    private static bool MissesWindow(MeasuredHold hold, DataSheet sheet) =>
        hold.Step is Step.HoldNeutral or Step.HoldForward or Step.HoldReverse or Step.HoldInGear
        && hold.Rpm is { } rpm
        && Math.Abs(rpm.Value - sheet.HoldRpm) > sheet.HoldWindowRpm;

    private static string Text(string code, MeasuredHold hold, StepReadings steps, DataSheet sheet) =>
        code switch
        {
            SpeedWindow => Sentences.OutsideSpeedWindow(hold.Step, hold.Rpm!.Value, sheet),
            StallNotes.TooLong => Sentences.StallReadTooLate(hold.Step, StallNotes.SecondsInto(hold, steps.Stalls), StallNotes.LimitSeconds(sheet)),
            _ => Sentences.DriveCut(hold.Step),
        };
}
