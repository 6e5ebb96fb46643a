using System;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>Tests of one invented truck, healthy and with two faults, recorded once for all that compares them.</summary>
public sealed class RepairTraces : IDisposable
{
    private readonly Workbench bench = new();

    public RepairTraces()
    {
        foreach (string fault in (string[])["healthy", "modulator-slow", "forward-clutch-leak"])
        {
            LoggerBoxCommand.Run("demo", "--cause", fault, "--out", bench.At(fault)).Expect(0);
            LoggerBoxCommand.Run("export", "S1", "--archive", bench.At(fault + "/archive.sqlite"), "--out", Of(fault)).Expect(0);
        }
    }

    public string Sheet => bench.At("healthy/sample-truck.toml");

    public string Of(string fault) => bench.At(fault + ".csv");

    public void Dispose() => bench.Dispose();
}
