using System;
using LoggerBox.Capture;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.TruckSimulator.Replay;

/// <summary>Runs a recording through the logger's own capture engine, as if it had been clipped to the truck.</summary>
public static class ReplayRun
{
    // Sample blocks of unevenly timed sets take 12 bytes a set, and the rest of a session is small beside them.
    private const int BytesPerRow = 16;
    private const int BytesBeside = 1 << 20;

    private const int RowsBetweenWords = 4096;

    /// <summary>The session's record bytes, as a logger would hand them over.</summary>
    /// <param name="captured">Told now and then how many rows were played.</param>
    public static byte[] Capture(Recording recording, PlanRecord plan, Action<int>? captured = null)
    {
        ArgumentNullException.ThrowIfNull(recording);
        RecordLog log = new(new MemoryStore((recording.Microseconds.Length * BytesPerRow) + BytesBeside));
        log.Open();
        ReplayBoard board = new(recording);
        CaptureEngine engine = new(board, log, plan, Header(recording));
        // A logger's clock runs from its boot and is never negative; a recording may count from anywhere.
        long zero = recording.Microseconds[0];
        for (int row = 0; row < recording.Microseconds.Length; row++)
        {
            board.Row = row;
            engine.Step(recording.Microseconds[row] - zero);
            if (row % RowsBetweenWords == 0)
            {
                captured?.Invoke(row);
            }
        }

        engine.End(SessionEndReason.EndOfRecording, recording.Microseconds[^1] - zero);
        LoggedSession session = log.Sessions.Last!;
        byte[] bytes = new byte[session.Length];
        log.Read(session, 0, bytes, 0, bytes.Length);
        return bytes;
    }

    private static SessionHeader Header(Recording recording)
    {
        SessionHeader header = new() { SampleIntervalMicroseconds = 0, HasGearInput = recording.HasGear };
        for (int i = 0; i < header.Pressures.Length; i++)
        {
            ChannelCalibration from = recording.Pressures[i];
            ChannelCalibration to = header.Pressures[i];
            to.Kind = from.Kind;
            to.ZeroCounts = from.ZeroCounts;
            to.SpanCounts = from.SpanCounts;
            to.SpanPascal = from.SpanPascal;
            to.AccuracyPascal = from.AccuracyPascal;
        }

        return header;
    }
}
