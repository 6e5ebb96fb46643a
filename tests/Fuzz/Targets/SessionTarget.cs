using System;
using System.Collections.Generic;
using System.IO;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Tests.DataSheets;
using LoggerBox.Host.Tests.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Tests;

namespace LoggerBox.Fuzz.Targets;

/// <summary>
/// Below the CRC: a session with records changed, doubled, left out or in another order is decoded, judged and reported like any other: what
/// a logger says may be wrong, and what is made of it must not fail.
/// </summary>
internal sealed class SessionTarget : FuzzTarget
{
    private static readonly DataSheet Sheet = DataSheetReader.Parse(SampleSheet.Full, "sheet.toml");
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly List<byte[]> sound = [];

    public SessionTarget()
    {
        RecordedBytes session = RecordedBytes.Session(7, seed: 1);
        foreach (IRecord record in Examples.Records())
        {
            session.Add(record);
        }

        byte[] bytes = session.ToArray();
        for (int i = 0; i < session.Starts.Count; i++)
        {
            sound.Add(bytes[session.Starts[i]..(i + 1 < session.Starts.Count ? session.Starts[i + 1] : bytes.Length)]);
        }
    }

    public override long MostBytes => 96 << 20;

    public override string? Try(Random random)
    {
        List<byte[]> records = [.. sound];
        for (int change = random.Next(1, 7); change > 0 && records.Count > 1; change--)
        {
            Change(records, random);
        }

        byte[] bytes = [.. Joined(records)];
        DecodedSession decoded = SessionDecoder.Decode(random.Next(4) == 0 ? bytes[..random.Next(bytes.Length + 1)] : bytes);
        foreach (SessionGap gap in decoded.Session.Gaps)
        {
            _ = GapWords.Of(gap, decoded.Session) + GapWords.Lasting(gap);
        }

        Judgement judgement = Judge.Of([decoded.Session], Sheet, new JobFacts(), PressureUnit.Bar);
        using StringWriter text = new();
        JudgementJson.Write(judgement, text);
        ReportDocument report = new("session", judgement, null, [], null, [new ReportRecording("session", decoded.Session, Now, TimeSpan.Zero)], Now);
        new TextReport(text, false).Write(report);
        text.Write(CsvExport.Render(decoded.Session, "session", PressureUnit.Psi));
        if (random.Next(4) == 0)
        {
            text.Write(HtmlReport.Render(report));
        }

        return decoded.Session.Samples.Count == decoded.SampleSets ? null : "more samples counted than kept";
    }

    private static void Change(List<byte[]> records, Random random)
    {
        int at = random.Next(records.Count);
        byte[] record = records[at];
        switch (random.Next(8))
        {
            case 0:
                records.RemoveAt(at);
                break;
            case 1:
                records.Insert(random.Next(records.Count), record);
                break;
            case 2:
            case var _ when record.Length < RecordFormat.EnvelopeLength:
                records[at] = ByteMutation.Of(record, random);
                break;
            default:
                byte[] body = ByteMutation.Of(record[RecordFormat.HeaderLength..^RecordFormat.CrcLength], random);
                records[at] = SealedRecord.Of((RecordCode)record[2], record, body.AsSpan(0, Math.Min(body.Length, RecordFormat.MaxBody)).ToArray());
                break;
        }
    }

    private static IEnumerable<byte> Joined(List<byte[]> records)
    {
        foreach (byte[] record in records)
        {
            foreach (byte one in record)
            {
                yield return one;
            }
        }
    }
}
