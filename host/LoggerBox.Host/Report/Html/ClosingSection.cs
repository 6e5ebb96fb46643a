using System;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report.Html;

/// <summary>Cautions, with what it was measured, who answers for it, and what proves it unchanged.</summary>
internal static class ClosingSection
{
    private const string Cautions =
        "This report names suspects, not culprits. The truck's own service manual, local safety law and the judgement of a licensed technician come before it. "
        + "Before any further check: truck down and wheels chocked for stalls, drive wheels clear and the truck on rated stands for tests in gear, load lowered, nobody near; "
        + "engine off and pressure gone before a hose is touched; hot oil burns; ventilate against exhaust gas. Never bypass a seat, brake or direction interlock.";

    public static void Write(Markup page, ReportDocument report)
    {
        page.Element("h2", "Instrument and uncertainty");
        foreach (ReportRecording recording in report.Recordings)
        {
            page.Element("p", Instrument(recording));
        }

        page.Element("p", "± is the expanded uncertainty for 95 % (k = 2, Student's t where readings are few): scatter of the hold, zero and span of the transducers as stated for the instrument. "
            + "A reading inside or outside a limit by less than that is too close to call and accuses nobody by itself.");
        page.Open("div", "caution").Element("strong", "Cautions. ").Text(Cautions).Close("div");

        page.Open("div", "signatures");
        page.Element("div", "Technician, date").Element("div", "Checked by, date").Element("div", "Customer, date").Close("div");

        page.Open("footer");
        page.Element("div", $"Rules {report.Judgement.Rules}. Pressures in {Figure.Unit(report.Judgement.Unit)}. Verdicts can be computed again from the records at any time.");
        foreach (ReportRecording recording in report.Recordings)
        {
            page.Element("div", $"{recording.Name}: SHA-256 of the records {recording.Fingerprint}");
        }

        page.Close("footer");
    }

    private static string Instrument(ReportRecording recording)
    {
        SessionHeader header = recording.Session.Header;
        string who = header.LoggerId == 0 ? "recording of another instrument" : $"logger {header.LoggerId:X8}, session {header.SessionNumber}";
        string rate = header.SampleIntervalMicroseconds == 0 ? "unevenly spaced samples" : $"{1e6 / header.SampleIntervalMicroseconds:0.#} sample sets a second";
        string pickup = $"{header.PickupPulses / (double)Math.Max((ushort)1, header.PickupRevolutions):0.###} pickup pulses per revolution";
        string accuracy = header.Pressures.Max(channel => channel.AccuracyPascal) is int pascal and > 0
            ? $"stated error of the pressures up to {pascal / 1000.0:0.#} kPa"
            : "error of the pressure channels not stated";
        return $"{recording.Name}: {who}, {recording.Session.Samples.Count} sample sets, {rate}, {pickup}, {accuracy}.";
    }
}
