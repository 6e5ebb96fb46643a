using System;
using System.Diagnostics;
using System.IO;
using System.Threading.Tasks;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>Whatever a device says: the program ends, with a sentence, in bounded memory, and nothing is written but the archive.</summary>
public sealed class HostileLoggerTests
{
    private const long MostMemory = 200_000_000;
    private const int LongestSession = 48 * 1024 * 1024;

    [Theory]
    [InlineData(uint.MaxValue)]
    [InlineData(1u << 31)]
    [InlineData(LongestSession + 1u)]
    [InlineData(0u)]
    public void A_length_that_no_session_has_is_not_believed(uint length)
    {
        (int status, string said) = Fetch(page => One(page, length), (logger, fetch) => Random(logger, fetch));
        Assert.Equal(0, status);
        Assert.Contains($"claims a length of {length} bytes", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_longest_session_that_is_believed_fits_into_memory()
    {
        (int status, string said) = Fetch(page => One(page, LongestSession), Random);
        Assert.True(status == 0, said);
    }

    [Fact]
    public void A_session_that_is_much_in_few_bytes_fits_into_memory()
    {
        // Blocks of 128 equal sets: eighty times as much once they are read.
        RecordWriter writer = new();
        using MemoryStream session = new();
        session.Write(writer.Bytes, 0, writer.Write(new SessionHeader { SessionNumber = 1, SampleIntervalMicroseconds = 20_000 }, 1, 1, 0));
        SampleBlock block = new();
        block.Begin(20_000);
        SampleSet sample = new();
        while (block.TryAdd(sample))
        {
            sample.Microseconds += 20_000;
        }

        for (uint i = 1; i <= 60_000; i++)
        {
            session.Write(writer.Bytes, 0, writer.Write(block, 1, 1, i));
        }

        byte[] bytes = session.ToArray();
        (int status, string said) = Fetch(page => One(page, (uint)bytes.Length), (logger, fetch) => Send(logger, fetch, bytes));
        Assert.True(status == 0, said);
    }

    [Fact]
    public void Sessions_without_end_are_not_listed()
    {
        (int status, string said) = Fetch(
            page =>
            {
                page.Total = ushort.MaxValue;
                page.Count = SessionList.MaxEntries;
            },
            Random);
        Assert.Equal(1, status);
        Assert.Contains("claims 65535 sessions", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_bytes_without_end_are_given_up()
    {
        (int status, string said) = Fetch(page => One(page, 100_000), (logger, fetch) =>
        {
            while (true)
            {
                logger.Say(new Data { Tag = fetch.Tag, Offset = 0, Length = 1000 });
            }
        });
        Assert.Equal(1, status);
        Assert.Contains("does not come through", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_logger_that_falls_silent_is_given_up()
    {
        (int status, string said) = Fetch(page => One(page, 100_000), (_, _) => { });
        Assert.Equal(1, status);
        Assert.Contains("100000 bytes are missing", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../../../escaped")]
    [InlineData("/tmp/escaped")]
    [InlineData("=cmd|' /C calc'!A0")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("a\0b\u001b[2J\u202e")]
    public void A_name_is_text_and_nothing_else(string name)
    {
        RecordWriter writer = new();
        int length = writer.Write(new SessionHeader { SessionNumber = 1, SampleIntervalMicroseconds = 20_000, PlanName = name }, 1, 1, 0);
        byte[] session = writer.Bytes[..length];
        (int status, string said) = Fetch(page => One(page, (uint)length), (logger, fetch) => Send(logger, fetch, session));
        Assert.True(status == 0, said);
        Assert.DoesNotContain('\u001b', said);
    }

    private static void One(SessionList page, uint length)
    {
        page.Total = 1;
        page.Count = page.FirstIndex == 0 ? 1 : 0;
        page.Entries[0].Number = 1;
        page.Entries[0].BootCount = 1;
        page.Entries[0].Length = length;
        page.Entries[0].Ended = true;
    }

    private static void Send(HostileLogger logger, Fetch fetch, byte[] session)
    {
        Data data = new() { Tag = fetch.Tag, Offset = fetch.Offset };
        for (long left = fetch.Length; left > 0; left -= data.Length)
        {
            data.Length = (int)Math.Min(left, Data.MaxPayload);
            session.AsSpan((int)data.Offset, data.Length).CopyTo(data.Payload);
            logger.Say(data);
            data.Offset += (uint)data.Length;
        }
    }

    private static void Random(HostileLogger logger, Fetch fetch)
    {
        Data data = new() { Tag = fetch.Tag, Offset = fetch.Offset };
        Random random = new((int)fetch.Offset);
        for (long left = fetch.Length; left > 0; left -= data.Length)
        {
            data.Length = (int)Math.Min(left, Data.MaxPayload);
            random.NextBytes(data.Payload);
            logger.Say(data);
            data.Offset += (uint)data.Length;
        }
    }

    private static (int Status, string Said) Fetch(Action<SessionList> list, Action<HostileLogger, Fetch> send)
    {
        using var bench = new Workbench();
        using var logger = new HostileLogger(list, send);
        using Process fetch = LoggerBoxCommand.Start("fetch", "--port", logger.Port, "--archive", bench.Archive);
        Task<string> output = fetch.StandardOutput.ReadToEndAsync();
        Task<string> error = fetch.StandardError.ReadToEndAsync();
        long memory = PeakMemory.Of(fetch, TimeSpan.FromSeconds(180), out bool ended);
        Assert.True(ended, "fetch did not end");
        Assert.InRange(memory, 1, MostMemory);
        Assert.DoesNotContain("   at ", error.Result, StringComparison.Ordinal);
        Assert.All(bench.Files(), file => Assert.StartsWith("archive.sqlite", file, StringComparison.Ordinal));
        return (fetch.ExitCode, error.Result + output.Result);
    }
}
