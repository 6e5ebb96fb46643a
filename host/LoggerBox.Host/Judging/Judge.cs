using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Suspecting;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>Recorded facts, a data sheet and the work order into a judgement. Pure: the same input gives the same output.</summary>
public static class Judge
{
    /// <param name="sessions">The sessions of one job in order of time; one for a single recording.</param>
    /// <param name="unit">Pressures of the judgement; limits are converted to it after judging.</param>
    public static Judgement Of(IReadOnlyList<RecordedSession> sessions, DataSheet sheet, JobFacts facts, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(facts);
        var evidence = EvidenceOf(sessions, sheet, facts);
        StepReadings steps = evidence.Steps;
        IReadOnlyList<Suspect> suspects = SuspectList.Of(evidence, unit);
        List<Check> checks = [.. CheckList.Of(evidence).Select(check => InUnit(check, sheet.Unit, unit))];
        List<ValidityNote> guards = [.. GuardNotes.Of(evidence, checks, suspects)];
        return new Judgement(
            RuleSet.Version,
            unit,
            sheet.Truck,
            sheet.FileName,
            sheet.Source,
            [.. guards, .. Notes(evidence, unit), .. CloseNotes.Of(checks, mayStall: !guards.Exists(note => note.Code == GuardNotes.NoStall))],
            steps.All.Select(hold => Shown(hold, steps, unit)).ToList(),
            sessions.SelectMany((session, i) => Engagements(session).Select(one => sessions.Count == 1 ? one : one with { Recording = i + 1 })).ToList(),
            checks,
            suspects,
            Sentences.NotCovered)
        {
            SheetVersion = sheet.Version,
            StallHeats = StallHeat.Of(steps, sheet.Converter),
        };
    }

    /// <summary>The readings that a judgement rests on, without judging them.</summary>
    public static Evidence EvidenceOf(IReadOnlyList<RecordedSession> sessions, DataSheet sheet, JobFacts facts)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(facts);
        var plan = SheetPlan.Make(sheet, facts.Fuel);
        var holds = ClutchPort.Seen([.. sessions.SelectMany(session => Measured(session, plan))], sheet);
        IReadOnlyList<StallRun> stalls = StallRun.Of(holds);
        return new Evidence(
            [.. sessions.Select(session => ClutchPort.Seen(session, holds, sheet))], sheet, facts, new StepReadings(holds, stalls, HoldGates.Voids(holds, stalls, sheet)));
    }

    private static IEnumerable<MeasuredHold> Measured(RecordedSession session, PlanRecord plan)
    {
        IReadOnlyList<LoopFault> faults = LoopFault.Of(session);
        return HoldMeasuring.Measure(session, plan).Select(hold => LoopFault.Seen(hold, faults));
    }

    private static IEnumerable<ValidityNote> Notes(Evidence evidence, PressureUnit unit) =>
        HoldGates.Notes(evidence.Steps, evidence.Sheet, evidence.Sessions.SelectMany(s => s.Events))
            .Concat(SessionNotes.Of(evidence, unit))
            .Concat(Completeness.Notes(evidence))
            .Concat(SheetNotes.Of(evidence.Sheet))
            .Concat(CrankedNotes.Of(evidence.Steps))
            .Concat(EngagementNotes.Of(evidence))
            .Concat(LoopNotes.Of(evidence))
            .Concat(MissedSteps.Notes(evidence))
            .Concat(ClosingZero.Notes(evidence))
            .Concat(DriftNotes.Of(evidence.Steps, unit));

    private static JudgedHold Shown(MeasuredHold hold, StepReadings steps, PressureUnit unit) => new(
        hold.Step,
        hold.Gear,
        hold.StartSeconds,
        hold.DurationSeconds,
        steps.Counts(hold),
        Shown(hold, Channel.Speed, 1),
        Shown(hold, Channel.Main, unit.InPascal()),
        Shown(hold, Channel.Clutch, unit.InPascal()),
        Shown(hold, Channel.Converter, unit.InPascal()));

    private static Reading? Shown(MeasuredHold hold, int channel, double divisor) =>
        hold.Of(channel) is { } measured && HoldMeasuring.Peak(hold, channel) is { } peak
            ? new Reading(measured.Value / divisor, peak / divisor, measured.Expanded / divisor)
            : null;

    private static IEnumerable<JudgedEngagement> Engagements(RecordedSession session) =>
        session.Engagements.Select(record => new JudgedEngagement(
            record.Gear,
            session.SecondsAt(record.StartMicroseconds),
            record.NeverFilled ? null : record.FillMilliseconds / 1000.0,
            record.NeverFilled ? null : record.RiseMilliseconds / 1000.0,
            record.NeverFilled ? null : record.TotalMilliseconds / 1000.0,
            record.NeverFilled ? null : record.OvershootPerMille / 10.0));

    private static Check InUnit(Check check, PressureUnit from, PressureUnit to)
    {
        if (check.Unit != from.Code() || from == to)
        {
            return check;
        }

        double factor = from.InPascal() / to.InPascal();
        return check with
        {
            Value = check.Value * factor,
            Uncertainty = check.Uncertainty * factor,
            Min = check.Min * factor,
            Max = check.Max * factor,
            Unit = to.Code(),
        };
    }
}
