using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>Agreement of the observations with each row of the cause matrix, less contradiction; what was not seen counts for neither side.</summary>
public static class CauseScoring
{
    /// <summary>A cell counts as said for or against from here on.</summary>
    private const double WorthSaying = 0.25;

    /// <summary>How common a cause is beside its neighbours, natural logarithm; common practice, no source. It orders causes that fit alike.</summary>
    private static readonly Dictionary<Cause, double> Commonness = new()
    {
        [Cause.EnginePowerLow] = 0.4,
        [Cause.EngineLimitedByControl] = -0.3,
        [Cause.WorkHydraulicsLoading] = -0.1,
        [Cause.PumpWorn] = 0.8,
        [Cause.StrainerRestricted] = -0.2,
        [Cause.LubePlugMissing] = -0.35,
        [Cause.AirThin] = -0.2,
        [Cause.GovernorDroop] = 0.1,
        [Cause.DriveInputBroken] = -0.2,
        [Cause.OilCold] = -0.3,
    };

    /// <summary>Most shops stand low enough and where it is cool enough; who works high up writes it on the work order.</summary>
    private const double SiteUnknown = -0.6;

    /// <summary>What was measured cannot be so with this cause.</summary>
    private const double RuledOut = -100;

    private const double NoPressurePascal = 20_000;

    /// <summary>Part of governed speed; 8 to 15 % where venturi vacuum governs (from memory), and what a drop over relief shows beside it.</summary>
    private const double WidestDroop = 0.18;

    private static readonly string[] BadOil = ["low", "foam", "foams", "foaming", "foamy", "aerated", "bubbles", "milky", "empty"];

    public static IReadOnlyList<CauseScore> Of(IReadOnlyList<Observed> observations, Evidence evidence, Roles roles)
    {
        ArgumentNullException.ThrowIfNull(observations);
        ArgumentNullException.ThrowIfNull(evidence);
        var accusing = observations.Where(seen => seen.Accuses).ToList();
        ArgumentNullException.ThrowIfNull(roles);
        var best = Enumerable.Range(0, CauseMatrix.RowCount)
            .Select(row => (Row: row, Cause: CauseMatrix.CauseOf(row), Points: observations.Sum(o => o.Points(row))))
            .GroupBy(scored => scored.Cause)
            .Select(group => group.MaxBy(scored => scored.Points))
            .ToList();
        return best
            .Select(scored => (scored.Cause, Shown: roles.GearsUnknown ? Mirrored(best, scored) : scored))
            .Select(scored => new CauseScore(
                scored.Cause,
                scored.Shown.Points + Circumstances(scored.Cause, scored.Shown.Row, evidence, roles, accusing),
                scored.Shown.Row,
                Said(observations, scored.Shown.Row, speaksFor: true),
                Said(observations, scored.Shown.Row, speaksFor: false))
            {
                Commonness = Commonness.GetValueOrDefault(scored.Cause),
            })
            .OrderByDescending(score => score.Points)
            .ToList();
    }

    /// <summary>Where forward and reverse cannot be told apart, neither can their causes: the better fit goes for both.</summary>
    private static (int Row, Cause Cause, double Points) Mirrored(
        List<(int Row, Cause Cause, double Points)> all, (int Row, Cause Cause, double Points) scored)
    {
        Cause? mirror = MirrorCauses.Of(scored.Cause);
        var other = all.FirstOrDefault(candidate => candidate.Cause == mirror, scored);
        return other.Points > scored.Points ? other : scored;
    }

    /// <summary>What the work order and the sheet say beside the readings: site and oil.</summary>
    private static double Circumstances(Cause cause, int row, Evidence evidence, Roles roles, List<Observed> accusing) => cause switch
    {
        Cause.AirThin => ThinAir(evidence, roles) + DropBesideStall.Points(evidence, roles),
        Cause.EnginePowerLow => DropBesideStall.Points(evidence, roles),
        Cause.GovernorLow or Cause.GovernorHigh when GovernedIsIn(evidence) => RuledOut,
        Cause.OilCold => ColdOil.Points(evidence, accusing, row),
        Cause.ForwardFeedOpen or Cause.ReverseFeedOpen => ClutchFilling.Holds(roles, CauseMatrix.CauseOf(row)) ? -3 : 0,
        Cause.OilLowOrAerated => OilLooksBad(evidence) ? 2 : 0,
        Cause.GovernorLow => IsStallOutOfReach(evidence, roles) ? -2 : 0,
        Cause.StatorSlipping => StallIsOnlyALittleLow(evidence, roles) ? -3 : 0,
        Cause.DriveInputBroken when IsPumpStanding(row) => SomePressureIsLeft(evidence) ? RuledOut : 0,
        Cause.DriveInputBroken => StallHeight.IsNearGoverned(evidence) ? 0 : RuledOut,
        _ => 0,
    };

    /// <summary>Beyond doubt within its limits: nobody sets it, whatever else is off.</summary>
    private static bool GovernedIsIn(Evidence evidence) =>
        evidence is { Governed: { } governed, Engine.GovernedRpm: { IsJudged: true } limit } && LimitCheck.Judge(governed, limit) == Verdict.In;

    /// <summary>
    /// A governor closes the throttle over its droop only: a stall that is low farther below governed speed than that was made low by something
    /// else, a pedal that stops short for one.
    /// </summary>
    private static bool IsStallOutOfReach(Evidence evidence, Roles roles) =>
        evidence.Governed is { } governed
        && Shortfall(roles, Step.StallForward, evidence.Engine.StallForwardRpm) > 0
        && roles.Of(Step.StallForward)?.Rpm is { } stall && stall.Value < governed.Value * (1 - WidestDroop);

    /// <summary>A torn drive plate stops the charge pump as well: the row of the matrix on which no pressure is left.</summary>
    private static bool IsPumpStanding(int row) => CauseMatrix.Expected(row, Observation.MainHoldNeutral) == '_';

    private static bool SomePressureIsLeft(Evidence evidence) =>
        evidence.Steps.All.Any(hold => hold.Rpm is { Value: > MeasuredHold.RunningRpm } && hold.Main is { } main && main.Value > NoPressurePascal + main.Expanded);

    /// <summary>Stall figures are guides: low by less than this alone never points to the inside of a converter.</summary>
    private static bool StallIsOnlyALittleLow(Evidence evidence, Roles roles) =>
        Shortfall(roles, Step.StallForward, evidence.Engine.StallForwardRpm) < StallHeight.GuideRpm
        && Shortfall(roles, Step.StallReverse, evidence.Engine.StallReverseRpm) < StallHeight.GuideRpm;

    private static double Shortfall(Roles roles, Step step, Limit? limit) =>
        roles.Of(step)?.Rpm is { } stall && limit?.Min is { } least ? least - stall.Value : 0;

    private static double ThinAir(Evidence evidence, Roles roles)
    {
        if (evidence.AltitudeMetres is null && evidence.AirCelsius is null)
        {
            return SiteUnknown;
        }

        double predicted = SiteAir.StallDrop(SiteAir.TorqueLoss(evidence.AltitudeMetres, evidence.AirCelsius));
        double? seen = Larger(
            StallDeficit(roles, Step.StallForward, evidence.Engine.StallForwardRpm), StallDeficit(roles, Step.StallReverse, evidence.Engine.StallReverseRpm));
        return predicted < 0.02 ? -4 : seen is null ? 1 : seen < (1.3 * predicted) + 0.03 ? 2.5 : -3;
    }

    /// <summary>Thin air lowers both alike; one clutch that slips raises its own.</summary>
    private static double? Larger(double? one, double? other) => one > other || other is null ? one : other;

    private static double? StallDeficit(Roles roles, Step step, Limit? limit)
    {
        double? nominal = limit?.Nominal ?? ((limit?.Min + limit?.Max) / 2) ?? limit?.Min;
        return roles.Of(step)?.Rpm is { } stall && nominal is > 0 ? 1 - (stall.Value / nominal) : null;
    }

    private static bool OilLooksBad(Evidence evidence) => SaysBad(evidence.Facts.OilLevel) || SaysBad(evidence.Facts.OilLook);

    /// <summary>Whole words: "yellow" and "slow" are no "low"; "no foam" is none.</summary>
    private static bool SaysBad(string? text)
    {
        string before = "";
        foreach (string word in (text ?? "").ToLowerInvariant().Split(' ', ',', ';', '.', ':', '/', '-'))
        {
            if (BadOil.Contains(word) && before is not ("no" or "not" or "without"))
            {
                return true;
            }

            before = word;
        }

        return false;
    }

    private static List<string> Said(IReadOnlyList<Observed> observations, int row, bool speaksFor)
    {
        var texts = new List<string>();
        foreach (var seen in observations)
        {
            double points = seen.Points(row);
            bool off = seen.Strongest != Level.Normal;
            if (speaksFor && off && points > WorthSaying)
            {
                texts.Add(Sentences.Level(seen.Text, seen.Strongest));
            }
            else if (!speaksFor && !off && points < -WorthSaying)
            {
                texts.Add(Sentences.NormalAgainst(seen.Text));
            }
            else if (!speaksFor && off && seen.Telling && points <= 0)
            {
                texts.Add(Sentences.Unexplained(seen.Text, seen.Strongest));
            }
        }

        return texts;
    }
}
