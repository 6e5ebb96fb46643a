using System;
using System.Globalization;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Storage;

namespace LoggerBox.PowerLoss;

/// <summary>A process to be killed: it records onto a file and says what the log has answered for.</summary>
public static class KilledChild
{
    public const string Verb = "record-until-killed";

    public const long CardBytes = 64 * 1024 * 1024;

    /// <summary>Prints "session blocks" after each block that is safe. Runs until it is killed, or the card is full.</summary>
    public static int Record(string path)
    {
        using FileStore store = new(path, CardBytes);
        RecordLog log = new(store);
        log.Open();
        SessionHeader header = new() { BootCount = (ushort)(log.Sessions.HighestBootCount + 1), SampleIntervalMicroseconds = 20_000 };
        if (!log.BeginSession(header))
        {
            return 1;
        }

        Random random = new((int)header.SessionNumber);
        for (int blocks = 0; ; blocks++)
        {
            Say(header.SessionNumber, blocks);
            bool taken = log.Append(new EventRecord { Value = blocks }) && log.Append(Examples.Block(random, blocks * 2_560_000L, SampleBlock.Capacity));
            if (!taken)
            {
                return 1;
            }
        }
    }

    private static void Say(uint session, int blocks)
    {
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{session} {blocks}"));
        Console.Out.Flush();
    }
}
