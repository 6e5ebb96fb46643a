using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Tests.Judging;

internal static class Judged
{
    public static Judgement Of(TestSession session, DataSheet? sheet = null, JobFacts? facts = null) =>
        Judge.Of([session.Build()], sheet ?? TestSheet.Truck(), facts ?? new JobFacts(), PressureUnit.Psi);

    public static string[] First(Judgement judgement) =>
        judgement.Suspects.Where(s => s.Rank == 1).Select(s => s.Code).ToArray();

    public static Check Check(Judgement judgement, string step, string quantity) =>
        judgement.Checks.Single(c => c.Step == step && c.Quantity == quantity);

    /// <summary>All suspects with rank, score and reasons, for a failing test's message.</summary>
    public static string Told(Judgement judgement) => string.Join(
        '\n', judgement.Suspects.Select(s => $"{s.Rank} {s.Code} {s.Score:0.00}\n  + {string.Join("\n  + ", s.For)}\n  - {string.Join("\n  - ", s.Against)}"));
}
