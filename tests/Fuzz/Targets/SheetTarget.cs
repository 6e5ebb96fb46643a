using System;
using System.Text;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Tests.DataSheets;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Fuzz.Targets;

/// <summary>A data sheet with pieces changed, or noise: read, and made a plan of that fits into its record, or refused.</summary>
internal sealed class SheetTarget : FuzzTarget
{
    private static readonly byte[] Sound = Encoding.UTF8.GetBytes(SampleSheet.Full);

    private static readonly string[] Pieces =
    [
        "[", "]", "{", "}", "=", "\n", "\"", "'", ".", ",", "nan", "-", "9999999999999999999", "[[pressure.at]]", "\0", "\u2028", "clutch.forward = 1", "also = { unit = \"bar\" }", "1e400", "[[[[[[[[",
        "inf", "min = 5", "max = -5", "nominal = 1", "tolerance_percent = 1e300", "rpm = 0", "rpm = 1e9", "\"\"\"", "\\u0000", "truck", "engine", "1979-05-27", "0x7fffffff", "true",
    ];

    private readonly ScratchFolder folder = new();
    private readonly RecordWriter writer = new();

    public override string? Try(Random random)
    {
        byte[] bytes = random.Next(8) == 0 ? ByteMutation.Noise(random, 300) : TextMutation.Of(Sound, Pieces, random);
        string path = folder.File("fuzz.toml", bytes);
        foreach (SheetFinding finding in DataSheetReader.Check(path))
        {
            if (finding.Line < 1 || finding.Text.Length == 0)
            {
                return $"a finding without its line or text: {finding}";
            }
        }

        PlanRecord plan = SheetPlan.Make(DataSheetReader.Read(path));
        return writer.Write(plan, 1, 1, 0) > 0 ? null : "its plan is longer than a record";
    }

    protected override void Dispose(bool disposing)
    {
        folder.Dispose();
        base.Dispose(disposing);
    }
}
