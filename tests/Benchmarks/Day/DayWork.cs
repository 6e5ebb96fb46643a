using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Subjects;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Demo;
using LoggerBox.TruckSimulator.Replay;

namespace LoggerBox.Benchmarks.Day;

/// <summary>What is done with the recording once it is in an archive. Each begins with the file and looks whether its own work came out right.</summary>
internal sealed class DayWork(string path, string cause)
{
    public void Verify()
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        DecodedSession decoded = SessionDecoder.Decode(file.Sessions.Bytes("S1"));
        Check(decoded.SampleSets == DayRecording.Sets && decoded.Damage == new SessionDamage(0, 0, 0));
    }

    public Judgement Judged()
    {
        (Subject subject, DataSheet sheet) = Subject();
        Judgement judgement = Judge.Of(subject.Sessions, sheet, subject.Facts, sheet.Unit);
        Check(judgement.Suspects.Any(suspect => suspect.Code == cause));
        return judgement;
    }

    public void Reported()
    {
        (Subject subject, DataSheet sheet) = Subject();
        ReportDocument report = subject.Report(Judge.Of(subject.Sessions, sheet, subject.Facts, sheet.Unit), sheet, DateTimeOffset.UtcNow);
        Check(HtmlReport.Render(report).Length > 10_000);
    }

    /// <summary>What nobody has to do, because the holds are records.</summary>
    public static void FindHoldsAgain((long Microseconds, short[] Counts)[] sets)
    {
        int[][] values = [.. Enumerable.Range(0, Channel.Count).Select(channel => Array.ConvertAll(sets, set => set.Counts[channel] + (channel == Channel.Speed ? SampleBlock.SpeedMiddleTenths : 0)))];
        Recording recording = new(
            Array.ConvertAll(sets, set => set.Microseconds),
            values,
            new Gear[sets.Length],
            new Step[sets.Length],
            Array.ConvertAll(sets, _ => (int)SampleSet.Missing),
            [new ChannelCalibration(), new ChannelCalibration(), new ChannelCalibration()],
            HasGear: false);
        Check(SessionDecoder.Decode(ReplayRun.Capture(recording, new PlanRecord())).SampleSets == sets.Length);
    }

    private (Subject Subject, DataSheet Sheet) Subject()
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        return (ArchivedSubjects.OfSession(file, "S1"), DataSheetReader.Parse(SampleSheet.Text(), SampleSheet.FileName));
    }

    private static void Check(bool isRight)
    {
        if (!isRight)
        {
            throw new InvalidDataException("The bench's own work came out wrong; its times mean nothing.");
        }
    }
}
