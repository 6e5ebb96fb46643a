using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Tests.Report;

/// <summary>An invented judgement with one of everything, for the renderers.</summary>
internal static class SampleReport
{
    public const string Fingerprint = "9f2c3a0e51b86d7744a1c0de0badf00d9f2c3a0e51b86d7744a1c0de0badf00d";

    public static Judgement Judgement(string spice = "") => new(
        "2026.1" + spice,
        PressureUnit.Psi,
        "Sample truck" + spice,
        "sample.toml" + spice,
        "invented figures, typed by hand" + spice,
        [
            new ValidityNote("oil-temperature-unknown", ValidityEffect.Note, Step.None, "Oil temperature is neither in the recording nor on the job." + spice),
            new ValidityNote("speed-window", ValidityEffect.Void, Step.HoldReverse, "The speed stood at 1880 rpm, outside 1925 to 2075 rpm." + spice),
        ],
        [Hold(Step.IdleNeutral, Gear.Neutral, 4, 705), Hold(Step.HoldForward, Gear.Forward, 21, 2003), Hold(Step.StallForward, Gear.Forward, 41, 1931)],
        [new JudgedEngagement(Gear.Forward, 15.2, 0.41, 0.66, 1.07, 3.2), new JudgedEngagement(Gear.Reverse, 33.4, null, null, null, null)],
        [
            new Check("idle-N", "rpm", 705, 4, "rpm", 640, 760, Verdict.In),
            new Check("idle-N", "main", 61.2, 1.9, "psi", 60, 81, Verdict.CloseLow),
            new Check("hold-F", "main", 158.4, 1.9, "psi", 136, 180, Verdict.In),
            new Check("hold-F", "clutch", 101.7, 1.9, "psi", 131, 180, Verdict.Low),
            new Check("hold-F", "converter", null, null, "psi", 22, null, Verdict.NotMeasured),
            new Check("hold-R", "main", 151.0, 1.9, "psi", 136, 180, Verdict.Void),
            new Check("stall-F", "rpm", 1931, 6, "rpm", 1820, 1925, Verdict.CloseHigh),
            new Check("governed", "rpm", 2590, 5, "rpm", 2390, 2510, Verdict.High),
            new Check("engage-F", "engagement-time", 1.07, 0.03, "s", 0.35, 2.0, Verdict.In),
        ],
        [
            new Suspect("forward-clutch-leak" + spice, 1, 0.82, ["clutch pressure in forward is low at the hold speed, in reverse it is normal" + spice], ["main pressure at idle is normal in forward" + spice], "Put shop air into the forward clutch port, as the manual allows, and listen." + spice),
            new Suspect("modulator-low", 2, 0.31, ["clutch pressure is low"], [], "Disconnect the inching link; if clutch pressure jumps up, the link is the fault."),
        ],
        [new NotCovered("brake-dragging", "These readings look the same with a brake that drags." + spice, "Free-roll the truck and feel the hubs." + spice)]);

    public static ReportDocument Document(string spice = "") => new(
        "job 12" + spice,
        Judgement(spice),
        new ReleaseNote(false, ReleaseNote.NotReleased, "The job is open. Open before a release: road test." + spice),
        [
            new ReportSection("Complaint, cause, correction", [new ReportFact("Complaint", "Slow on the ramp with a load, forward worse than reverse" + spice), new ReportFact("Cause found", null), new ReportFact("Correction", "none yet" + spice)]),
            new ReportSection("Truck and test", [new ReportFact("Serial", "SN-0042" + spice), new ReportFact("Hour meter", "4211 h"), new ReportFact("Oil", null), new ReportFact("Data sheet", "sample.toml — invented figures")]),
            new ReportSection("Instrument", [new ReportFact("Main pressure", "TX-1, calibrated against DW-1" + spice), new ReportFact("Main pressure", "CALIBRATION OVERDUE since 2026-01-31" + spice, IsLoud: true)]),
            new ReportSection("Records behind it", [new ReportFact("Session 7", "CRC-32C 0badf00d, SHA-256 " + Fingerprint)]),
        ],
        Comparison(spice),
        [new ReportRecording("session 7" + spice, Session(), DateTimeOffset.FromUnixTimeSeconds(1_790_000_000), TimeSpan.FromHours(2))],
        DateTimeOffset.FromUnixTimeSeconds(1_790_003_600).ToOffset(TimeSpan.FromHours(2)));

    public static ReportDocument With(RecordedSession session) => Document() with { Recordings = [new ReportRecording("session 7", session, null, TimeSpan.Zero)] };

    /// <summary>Eight holds, most of which follow on each other within a second.</summary>
    public static ReportDocument Crowded()
    {
        (Step Step, double Start)[] holds =
        [
            (Step.IdleNeutral, 2), (Step.IdleForward, 3), (Step.IdleReverse, 4), (Step.Governed, 40), (Step.Relief, 40.6), (Step.StallForward, 41.2), (Step.StallReverse, 50), (Step.HoldNeutral, 50.4),
        ];
        RecordedSession plain = Session();
        var session = new RecordedSession
        {
            Header = plain.Header,
            Samples = plain.Samples,
            Holds = [.. holds.Select(hold => new HoldRecord { StartMicroseconds = 5_000_000 + (long)(hold.Start * 1e6), DurationMilliseconds = 400, Step = hold.Step })],
        };
        Judgement judgement = Judgement() with { Holds = [.. holds.Select(hold => Hold(hold.Step, Gear.Neutral, hold.Start, 705) with { DurationSeconds = 0.4 })] };
        return With(session) with { Judgement = judgement };
    }

    private static ReportComparison Comparison(string spice) => new(
        "Still suspected after the repair" + spice,
        [
            new ReportChange("hold-F", "main", "psi", 157.9, 158.4, 0.5, 2.7, false, Verdict.In, Verdict.In),
            new ReportChange("hold-F", "clutch", "psi", 88.1, 101.7, 13.6, 2.7, true, Verdict.Low, Verdict.Low),
            new ReportChange("stall-F", "rpm", "rpm", 1950, 1931, -19, 8.5, true, null, Verdict.In),
        ],
        ["Not every step was measured before the repair." + spice]);

    /// <summary>One minute at 50 sets a second: a ramp up to 2000 rpm at 20 s, with no samples from 30 to 34 s.</summary>
    /// <param name="wildAt">The sample that interference made wild; -1: none.</param>
    public static RecordedSession Session(int wildAt = -1)
    {
        var samples = new List<RecordedSample>();
        for (int i = 0; i < 3000; i++)
        {
            double second = i / 50.0;
            if (second is < 30 or > 34)
            {
                int speed = (int)(7000 + 13000 * Math.Clamp((second - 20) / 2, 0, 1) + 40 * Math.Sin(i)) + (i == wildAt ? 9000 : 0);
                samples.Add(new RecordedSample(5_000_000 + i * 20_000L, speed, 4000 + i / 2, SampleSet.Missing, i == 0 ? SampleSet.Missing : 3600));
            }
        }

        var header = new SessionHeader { LoggerId = 0x1234ABCD, SessionNumber = 7, StartMicroseconds = 5_000_000, StartUtcSeconds = 1_790_000_000, SampleIntervalMicroseconds = 20_000, HasGearInput = true };
        foreach (ChannelCalibration channel in header.Pressures)
        {
            channel.Kind = ChannelKind.CurrentLoop;
            channel.ZeroCounts = 3200;
            channel.SpanCounts = 12800;
            channel.SpanPascal = 3_447_379;
            channel.AccuracyPascal = 8_600;
        }

        return new RecordedSession
        {
            Header = header,
            Samples = samples,
            Holds = [new HoldRecord { StartMicroseconds = 26_000_000, DurationMilliseconds = 4000, Step = Step.HoldForward, Gear = Gear.Forward }],
            Engagements = [new EngagementRecord { StartMicroseconds = 20_200_000, Gear = Gear.Forward, TotalMilliseconds = 1070 }],
            Events =
            [
                new EventRecord { Microseconds = 5_000_000, Kind = EventKind.GearTag, Value = (int)Gear.Neutral },
                new EventRecord { Microseconds = 15_000_000, Kind = EventKind.GearTag, Value = (int)Gear.Forward },
                new EventRecord { Microseconds = 26_000_000, Kind = EventKind.StepMark, Value = (int)Step.HoldForward },
                new EventRecord { Microseconds = 31_000_000, Kind = EventKind.StepMark, Value = (int)Step.None },
            ],
        };
    }

    private static JudgedHold Hold(Step step, Gear gear, double start, double rpm) => new(
        step, gear, start, 4, true, new Reading(rpm, rpm + 8, 4), new Reading(61.2, 64, 1.9), null, new Reading(33, 35, 1.9));
}
