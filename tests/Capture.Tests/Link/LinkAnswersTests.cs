using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Capture.Tests.Storage;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Link;

public sealed class LinkAnswersTests
{
    private readonly RecordLog log = LogExamples.Opened(new MemoryStore(200_000));
    private readonly Cable cable = new();
    private readonly LinkAnswers answers;

    public LinkAnswersTests()
    {
        answers = new LinkAnswers(log, cable, loggerId: 0xBEEF, bootCount: 4);
    }

    [Fact]
    public void Hello_tells_who_is_there_and_what_it_has()
    {
        LogExamples.Record(log, events: 2);
        HelloAnswer hello = (HelloAnswer)Assert.Single(Ask(new Hello { Version = LinkVersion.Current }));
        Assert.Equal((0xBEEFu, (ushort)4, (ushort)1), (hello.LoggerId, hello.BootCount, hello.SessionCount));
        Assert.Equal((77L, 88u), (hello.Microseconds, hello.UtcSeconds));
        Assert.Equal((log.FreeBytes, 200_000L), (hello.FreeBytes, hello.CapacityBytes));
    }

    [Fact]
    public void A_host_of_another_version_is_answered_so_that_it_can_say_which_one_this_is() =>
        Assert.Equal(LinkVersion.Current, Assert.IsType<HelloAnswer>(Assert.Single(Ask(new Hello { Version = 999 }))).Version);

    [Fact]
    public void More_sessions_than_one_list_holds_are_listed_from_the_next_index()
    {
        for (int i = 0; i < 70; i++)
        {
            LogExamples.Record(log, events: 0);
        }

        SessionList first = (SessionList)Assert.Single(Ask(new List()));
        SessionList second = (SessionList)Assert.Single(Ask(new List { FirstIndex = (ushort)first.Count }));
        Assert.Equal(70, first.Total);
        Assert.Equal(70, first.Count + second.Count);
        Assert.Equal(first.Entries[63].Number + 1, second.Entries[0].Number);
        Assert.Equal(0, Assert.IsType<SessionList>(Assert.Single(Ask(new List { FirstIndex = 9999 }))).Count);
    }

    [Theory]
    [InlineData(0u, uint.MaxValue, 100)]
    [InlineData(13u, 500u, 64)]
    [InlineData(0u, uint.MaxValue, 60000)]
    [InlineData(5u, 1u, 0)]
    [InlineData(uint.MaxValue, uint.MaxValue, 100)]
    public void A_range_arrives_as_the_log_holds_it(uint offset, uint length, int payload)
    {
        LogExamples.Record(log, events: 50);
        byte[] whole = LogExamples.Bytes(log, log.Sessions[0]);
        byte[] expected = whole.Skip((int)Math.Min(offset, int.MaxValue)).Take((int)Math.Min(length, int.MaxValue)).ToArray();

        List<IMessage> received = Ask(new Fetch { SessionNumber = 1, Offset = offset, Length = length, PayloadLength = (ushort)payload, EndWanted = true });
        FetchEnd end = Assert.IsType<FetchEnd>(received[^1]);
        List<byte> got = [];
        foreach (Data data in received.SkipLast(1).Cast<Data>())
        {
            Assert.Equal(offset + (uint)got.Count, data.Offset);
            got.AddRange(data.Payload.Take(data.Length));
        }

        Assert.Equal(expected, got);
        Assert.Equal(((uint)expected.Length, Crc32C.Of(expected, 0, expected.Length)), (end.Length, end.Crc));
    }

    [Fact]
    public void A_request_is_answered_between_the_frames_of_a_range()
    {
        LogExamples.Record(log, events: 100);
        cable.Send(new Fetch { SessionNumber = 1, Length = uint.MaxValue, PayloadLength = 64, EndWanted = true });
        answers.Step(0, 0);
        cable.Send(new List());
        List<IMessage> received = Run();
        int list = received.FindIndex(message => message is SessionList);
        Assert.InRange(list, 1, 2);
        Assert.Equal((int)log.Sessions[0].Length, received.OfType<Data>().Sum(data => data.Length));
        Assert.IsType<FetchEnd>(received[^1]);
    }

    [Fact]
    public void Ranges_come_in_the_order_of_the_requests_each_once_and_one_end_after_the_last()
    {
        LogExamples.Record(log, events: 100);
        foreach ((byte tag, uint offset) in ((byte, uint)[])[(1, 500), (2, 0), (3, 200), (2, 0), (1, 500)])
        {
            cable.Send(new Fetch { SessionNumber = 1, Offset = offset, Length = 100, PayloadLength = 50, Tag = tag, EndWanted = tag == 3 });
        }

        List<IMessage> received = Run();

        Assert.Equal([500u, 550u, 0u, 50u, 200u, 250u], received.OfType<Data>().Select(data => data.Offset));
        FetchEnd end = Assert.IsType<FetchEnd>(received[^1]);
        Assert.Equal((3, 200u, 100u), (end.Tag, end.Offset, end.Length));
        Assert.Equal(7, received.Count);
    }

    [Fact]
    public void More_ranges_than_the_logger_keeps_are_refused()
    {
        LogExamples.Record(log, events: 100);
        cable.BytesTakenAtOnce = 0;
        for (uint i = 0; i < 70; i++)
        {
            cable.Send(new Fetch { SessionNumber = 1, Offset = i * 16, Length = 16, PayloadLength = 16, Tag = (byte)i });
        }

        for (int i = 0; i < 20; i++)
        {
            answers.Step(0, 0);
        }

        cable.BytesTakenAtOnce = int.MaxValue;
        List<IMessage> received = Run();

        Assert.Contains(received, message => message is Refusal { Request: MessageCode.Fetch, Reason: RefusalReason.TooManyRequests });
        Assert.InRange(received.OfType<Data>().Count(), 64, 65);
    }

    [Fact]
    public void A_greeting_drops_what_was_asked_for_before()
    {
        LogExamples.Record(log, events: 100);
        cable.Send(new Fetch { SessionNumber = 1, Length = uint.MaxValue, PayloadLength = 64, EndWanted = true });
        answers.Step(0, 0);
        cable.Send(new Hello { Version = 1 });
        List<IMessage> received = Run();
        Assert.IsType<HelloAnswer>(received[^1]);
        Assert.InRange(received.Count, 1, 3);
    }

    [Fact]
    public void A_log_that_begins_again_while_a_range_waits_sends_nothing_of_the_new_session()
    {
        LogExamples.Record(log, events: 4000);
        byte[] whole = LogExamples.Bytes(log, log.Sessions[0]);
        Ask(new Confirm { SessionNumber = 1, Length = (uint)whole.Length, Crc = Crc32C.Of(whole, 0, whole.Length) });
        cable.Send(new Fetch { SessionNumber = 1, Length = 2000, PayloadLength = 64, EndWanted = true });
        answers.Step(0, 0);
        LogExamples.Record(log, events: 100);
        Assert.Equal(2u, log.Sessions[0].Number);

        List<IMessage> received = Run();

        Assert.All(received.OfType<Data>(), data => Assert.Equal(whole.AsSpan((int)data.Offset, data.Length).ToArray(), data.Payload[..data.Length]));
        Assert.InRange(received.OfType<Data>().Sum(data => data.Length), 0, 1999);
        Assert.IsType<FetchEnd>(received[^1]);
    }

    [Fact]
    public void A_repeated_confirm_does_not_begin_the_comparison_again()
    {
        LogExamples.Record(log, events: 1000);
        byte[] whole = LogExamples.Bytes(log, log.Sessions[0]);
        Confirm confirm = new() { SessionNumber = 1, Length = (uint)whole.Length, Crc = Crc32C.Of(whole, 0, whole.Length) };
        int steps = 0;
        do
        {
            cable.Send(confirm);
            answers.Step(0, 0);
            steps++;
        }
        while (!log.Sessions[0].Confirmed && steps < 1000);
        Assert.InRange(steps, 1, (whole.Length / 1024) + 3);
    }

    [Fact]
    public void A_line_that_takes_three_bytes_at_a_time_gets_whole_frames()
    {
        LogExamples.Record(log, events: 30);
        cable.BytesTakenAtOnce = 3;
        List<IMessage> received = Ask(new Fetch { SessionNumber = 1, Length = uint.MaxValue, PayloadLength = 256, EndWanted = true });
        Assert.Equal((int)log.Sessions[0].Length, received.OfType<Data>().Sum(data => data.Length));
    }

    [Fact]
    public void Requests_are_read_while_the_line_takes_nothing()
    {
        LogExamples.Record(log, events: 30);
        cable.BytesTakenAtOnce = 0;
        cable.Send(new Fetch { SessionNumber = 1, Length = uint.MaxValue, PayloadLength = 256, EndWanted = true });
        for (int i = 0; i < 5; i++)
        {
            answers.Step(0, 0);
        }

        cable.Send(new SetClock { UtcSeconds = 5 });
        answers.Step(0, 0);
        Assert.True(answers.ClockArrived);
        Assert.Equal(5u, answers.UtcSeconds);
    }

    [Fact]
    public void A_session_is_confirmed_when_length_and_crc_agree()
    {
        LogExamples.Record(log, events: 200);
        byte[] whole = LogExamples.Bytes(log, log.Sessions[0]);
        Confirm confirm = new() { SessionNumber = 1, Length = (uint)whole.Length, Crc = Crc32C.Of(whole, 0, whole.Length) ^ 1 };
        Assert.Equal(RefusalReason.DoesNotAgree, Assert.IsType<Refusal>(Assert.Single(Ask(confirm))).Reason);
        Assert.False(log.Sessions[0].Confirmed);

        confirm.Crc ^= 1;
        Assert.Equal(1u, Assert.IsType<Confirmed>(Assert.Single(Ask(confirm))).SessionNumber);
        Assert.True(log.Sessions[0].Confirmed);
        Assert.IsType<Confirmed>(Assert.Single(Ask(confirm)));
    }

    [Fact]
    public void Nothing_is_confirmed_while_recording()
    {
        LogExamples.Record(log, events: 1);
        Assert.True(log.BeginSession(LogExamples.Header()));
        Refusal refusal = Assert.IsType<Refusal>(Assert.Single(Ask(new Confirm { SessionNumber = 1 })));
        Assert.Equal((MessageCode.Confirm, RefusalReason.Recording), (refusal.Request, refusal.Reason));
    }

    [Fact]
    public void A_plan_arrives_whole()
    {
        Assert.IsType<PlanAnswer>(Assert.Single(Ask(new SendPlan(new PlanRecord { Name = "Sample truck", GovernedTenths = 24500 }))));
        Assert.True(answers.PlanArrived);
        Assert.Equal(("Sample truck", 24500), (answers.Plan.Name, answers.Plan.GovernedTenths));
    }

    [Fact]
    public void A_plan_that_cannot_be_is_refused_and_the_one_in_use_is_kept()
    {
        Ask(new SendPlan(new PlanRecord { Name = "first" }));
        Refusal refusal = Assert.IsType<Refusal>(Assert.Single(Ask(new SendPlan(new PlanRecord { Name = "second", PickupPulses = 0 }))));
        Assert.Equal((MessageCode.SendPlan, RefusalReason.Malformed), (refusal.Request, refusal.Reason));
        Assert.Equal("first", answers.Plan.Name);
    }

    [Fact]
    public void An_unknown_session_and_an_unknown_request_are_refused()
    {
        Assert.Equal(RefusalReason.NoSuchSession, Assert.IsType<Refusal>(Assert.Single(Ask(new Fetch { SessionNumber = 99 }))).Reason);
        Assert.Equal(RefusalReason.NoSuchSession, Assert.IsType<Refusal>(Assert.Single(Ask(new Confirm { SessionNumber = 99 }))).Reason);
        Assert.Equal(RefusalReason.UnknownRequest, Assert.IsType<Refusal>(Assert.Single(Ask(new LaterRequest()))).Reason);
    }

    [Fact]
    public void A_logger_that_hears_itself_says_nothing_to_it()
    {
        foreach (IMessage own in (IMessage[])[new Confirmed(), new HelloAnswer(), new Data(), new Refusal { Request = MessageCode.List }])
        {
            Assert.Empty(Ask(own));
        }
    }

    [Fact]
    public void Noise_is_not_answered()
    {
        byte[] noise = new byte[5000];
        new Random(3).NextBytes(noise);
        cable.ToLogger.AddRange(noise);
        Assert.Empty(Run());
        Assert.NotEmpty(Ask(new Hello()));
    }

    private List<IMessage> Ask(IMessage request)
    {
        cable.Send(request);
        return Run();
    }

    private List<IMessage> Run()
    {
        while (answers.Step(77, 88))
        {
        }

        return cable.Receive();
    }

    /// <summary>A request of a version that is not written yet.</summary>
    private sealed class LaterRequest : IMessage
    {
        public MessageCode Code => (MessageCode)0x7F;

        public void Write(ByteWriter writer) => writer.WriteByte(1);

        public bool TryRead(ByteReader reader) => false;
    }
}
