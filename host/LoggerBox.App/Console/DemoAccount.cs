using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Faults;

namespace LoggerBox.App.Console;

/// <summary>Tells along the way what the demo does, so that a newcomer sees the data walk from the pickup to the report.</summary>
internal sealed class DemoAccount
{
    private readonly TextWriter output;
    private readonly string cause;
    private readonly Stopwatch clock = Stopwatch.StartNew();

    public DemoAccount(TextWriter output, string cause, int seed)
    {
        this.output = output;
        this.cause = cause;
        output.WriteLine(Messages.DemoBegins(CauseWords.Of(cause), cause, seed));
    }

    public void Recorded(double virtualSeconds) => output.WriteLine(Messages.DemoRecorded(virtualSeconds, clock.Elapsed.TotalSeconds));

    public void Downloaded(string port, ArchivedSession session) =>
        output.WriteLine(Messages.DemoDownloaded(port, session.Length, session.Id, clock.Elapsed.TotalSeconds));

    /// <summary>Every step with the readings of the hold that counts.</summary>
    public void Captured(Judgement judgement)
    {
        string pressure = Figure.Unit(judgement.Unit);
        var table = new TextTable("llrrrrrr");
        table.Add("step", "", "at s", "held s", "rpm", "main " + pressure, "clutch " + pressure, "converter " + pressure);
        foreach (JudgedHold hold in judgement.Holds.Where(hold => hold.Counts).OrderBy(hold => hold.Step))
        {
            table.Add(
                StepCodes.Text(hold.Step),
                StepWords.Of(hold.Step),
                Figure.Seconds(hold.StartSeconds),
                Figure.Seconds(hold.DurationSeconds),
                Cell(hold.Rpm, "rpm"),
                Cell(hold.Main, judgement.Unit.Code()),
                Cell(hold.Clutch, judgement.Unit.Code()),
                Cell(hold.Converter, judgement.Unit.Code()));
        }

        output.WriteLine();
        output.WriteLine(Messages.DemoCaptured);
        table.WriteTo(output);
        output.WriteLine();
    }

    public void NotReleased(string job)
    {
        output.WriteLine();
        output.WriteLine(JobMessages.DemoNotReleased(job));
    }

    public void Ended(Judgement judgement, IReadOnlyList<string> files)
    {
        output.WriteLine();
        output.WriteLine(Named(judgement));
        foreach (string file in files)
        {
            output.WriteLine(Messages.Wrote(file));
        }

        output.WriteLine(Messages.DemoTook(clock.Elapsed.TotalSeconds));
    }

    private string Named(Judgement judgement)
    {
        if (cause == SimulatedCauses.Healthy)
        {
            return judgement.Suspects.Count == 0 ? Messages.DemoHealthy : Messages.DemoNotNamed(cause);
        }

        return judgement.Suspects.Any(suspect => suspect.Rank == 1 && suspect.Code == cause) ? Messages.DemoNamed(cause) : Messages.DemoNotNamed(cause);
    }

    private static string Cell(Reading? reading, string unit) => reading is null ? "-" : Figure.Of(reading.Settled, unit);
}
