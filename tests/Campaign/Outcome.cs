using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Campaign;

/// <summary>What came of one truck's test.</summary>
internal sealed record Outcome(TestedTruck Truck, Measurement Measured, Visibility Visibility)
{
    public IReadOnlyList<Suspect> Suspects => Measured.Seen.Suspects;

    /// <summary>0 where the true cause is not named.</summary>
    public int Rank => Suspects.FirstOrDefault(suspect => suspect.Code == Truck.Cause.Code)?.Rank ?? 0;

    /// <summary>Place in the list, counted from 1; 0 where it is not named.</summary>
    public int Place => Suspects.TakeWhile(suspect => suspect.Code != Truck.Cause.Code).Count() + 1 is var place && place <= Suspects.Count ? place : 0;

    public string First => Suspects.Count == 0 ? "nobody" : Suspects[0].Code;

    /// <summary>
    /// Verdicts that say more than "close", with what was really so. None where the measuring itself is at fault: its verdicts are about
    /// other readings than they say.
    /// </summary>
    public IReadOnlyList<(Check Check, double True)> PlainVerdicts { get; } = Compared(Truck, Measured);

    public static bool IsWrong((Check Check, double True) verdict) => verdict.Check.Verdict switch
    {
        Verdict.Low => !(verdict.True < verdict.Check.Min),
        Verdict.High => !(verdict.True > verdict.Check.Max),
        _ => verdict.True < verdict.Check.Min || verdict.True > verdict.Check.Max,
    };

    private static List<(Check, double)> Compared(TestedTruck truck, Measurement measured)
    {
        var compared = new List<(Check, double)>();
        if (truck.Cause.Code is "pickup-scale" or "pressure-zero-shift" or "pressure-lines-swapped" or "gear-tag-wrong")
        {
            return compared;
        }

        foreach (var group in measured.Seen.Checks.GroupBy(check => (check.Step, check.Quantity)))
        {
            foreach (var (check, which) in group.Select((check, which) => (check, which)))
            {
                if (check.Verdict is Verdict.In or Verdict.Low or Verdict.High && measured.Truth.Of(check, which, measured.Seen, measured.Seen.Unit) is { } truth)
                {
                    compared.Add((check, truth));
                }
            }
        }

        return compared;
    }
}
