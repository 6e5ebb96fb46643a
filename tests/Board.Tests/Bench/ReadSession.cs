using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Board.Tests.Bench;

/// <summary>What stands in a session's bytes.</summary>
public sealed class ReadSession
{
    public SessionHeader Header { get; } = new();

    public PlanRecord Plan { get; } = new();

    public List<(long Microseconds, EventKind Kind, int Value)> Events { get; } = [];

    public List<(long Microseconds, int[] Values)> Sets { get; } = [];

    public List<DropoutRecord> Dropouts { get; } = [];

    public List<HoldRecord> Holds { get; } = [];

    public SessionEnd? End { get; private set; }

    public IEnumerable<Cue> Cues => Events.Where(one => one.Kind == EventKind.Cue).Select(one => (Cue)one.Value);

    public IEnumerable<(BoardFault Fault, int Detail)> Faults =>
        Events.Where(one => one.Kind == EventKind.BoardFault).Select(one => ((BoardFault)(one.Value / 256), one.Value % 256));

    public static ReadSession Of(RecordLog log, LoggedSession session)
    {
        byte[] bytes = new byte[session.Length];
        log.Read(session, 0, bytes, 0, bytes.Length);
        RecordScan scan = new(bytes, 0, bytes.Length);
        ReadSession read = new();
        while (scan.MoveNext())
        {
            read.Take(scan);
        }

        return read;
    }

    /// <summary>Values of one channel between two moments, seconds.</summary>
    public int[] Values(int channel, double from, double to) =>
        Sets.Where(set => set.Microseconds >= from * 1e6 && set.Microseconds <= to * 1e6).Select(set => set.Values[channel]).ToArray();

    private void Take(RecordScan scan)
    {
        EventRecord one = new();
        SampleBlock block = new();
        DropoutRecord dropout = new();
        HoldRecord hold = new();
        SessionEnd end = new();
        switch (scan.Envelope.Code)
        {
            case RecordCode.SessionHeader:
                scan.TryReadBody(Header);
                break;
            case RecordCode.Plan:
                scan.TryReadBody(Plan);
                break;
            case RecordCode.Event when scan.TryReadBody(one):
                Events.Add((one.Microseconds, one.Kind, one.Value));
                break;
            case RecordCode.SampleBlock when scan.TryReadBody(block):
                TakeSets(block);
                break;
            case RecordCode.Dropout when scan.TryReadBody(dropout):
                Dropouts.Add(dropout);
                break;
            case RecordCode.Hold when scan.TryReadBody(hold):
                Holds.Add(hold);
                break;
            case RecordCode.SessionEnd when scan.TryReadBody(end):
                End = end;
                break;
            default:
                break;
        }
    }

    private void TakeSets(SampleBlock block)
    {
        SampleSet set = new();
        for (int i = 0; i < block.Count; i++)
        {
            block.CopyTo(i, set);
            Sets.Add((set.Microseconds, [.. set.Values]));
        }
    }
}
