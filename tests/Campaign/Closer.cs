using System;
using System.IO;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;

namespace LoggerBox.Campaign;

/// <summary>Everything about one truck: its judgement as a technician reads it, and every hold that was found.</summary>
internal static class Closer
{
    public static void Look(Outcome outcome, TextWriter writer)
    {
        Judgement seen = outcome.Measured.Seen;
        new TextReport(writer, colour: false).Write(new ReportDocument(outcome.Truck.ToString(), seen, null, [], null, [], DateTimeOffset.UnixEpoch));
        foreach (JudgedHold hold in seen.Holds)
        {
            writer.WriteLine(FormattableString.Invariant(
                $"{hold.StartSeconds,7:0.0} {hold.DurationSeconds,5:0.0} {hold.Step,-14} {hold.Gear,-8} {(hold.Counts ? "*" : " ")} {hold.Rpm?.Settled,7:0.0} {hold.Main?.Settled,8:0.00} {hold.Clutch?.Settled,8:0.00} {hold.Converter?.Settled,8:0.00}"));
        }
    }
}
