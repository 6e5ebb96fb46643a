using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// How far clutch pressure stays behind the main pressure that feeds it, beside what the sheet's two limits allow: some trucks run their
/// clutches a third below main, so the sheet says what is usual.
/// </summary>
public static class ClutchBehindMain
{
    private const double Practical = 0.12;
    private const double Gross = 0.5;

    public static Observed? Of(Evidence evidence, Roles roles, Observation observation, Step[] steps, PressureUnit unit) =>
        steps.Select(step => Of(evidence, roles, observation, step, unit)).OfType<Observed>().MaxBy(seen => seen.Levels[(int)Level.VeryLow] + seen.Levels[(int)Level.Low]);

    private static Observed? Of(Evidence evidence, Roles roles, Observation observation, Step step, PressureUnit unit)
    {
        var limits = StepLimits.Pressures(evidence.Sheet, step);
        if (roles.Of(step) is not { Main: { Value: > 50_000 } main, Clutch: { } clutch }
            || Usual(limits) is not { } usual || clutch.RelativeTo(main.Scaled(usual)) is not { } behind)
        {
            return null;
        }

        return new Observed(
            observation,
            Grading.Difference(behind, Practical, Gross),
            false,
            Sentences.ClutchWithMain(clutch, main, roles.Name(step), unit),
            0.8);
    }

    /// <summary>Clutch over main as the sheet has them; null where it does not limit both downwards.</summary>
    private static double? Usual(GearPressures limits) =>
        limits is { Clutch.Min: { } clutch, Main.Min: { } main } && main > 0 ? clutch / main : null;
}
