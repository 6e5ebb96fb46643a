using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.PowerLoss;

namespace LoggerBox.Benchmarks.Table;

/// <summary>How many crash states of the logger's card are tried in a second.</summary>
internal static class CrashFigures
{
    private const int Seed = 1;

    // Ten million states in a minute on one core.
    private const string Must = "at least 167,000 a second and core; 0 violations";

    public static IEnumerable<Figure> Of()
    {
        Campaign campaign = ShortCampaign.Make(Seed);
        Spent spent = Spent.On(() => campaign.Run(Environment.ProcessorCount));
        long states = campaign.StatesByFault.Values.Sum();
        yield return new Figure(
            "crash states of the card, a short campaign",
            FormattableString.Invariant($"{states / spent.Processor:N0} a second of processor, {states / spent.Clock:N0} by the clock; {campaign.Violations.Count} violations in {states:N0}"),
            Must,
            "tests/PowerLoss does them all");
    }
}
