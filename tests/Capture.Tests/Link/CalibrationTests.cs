using System.Linq;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Capture.Tests.Storage;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Link;

public sealed class CalibrationTests
{
    private readonly Cable cable = new();
    private readonly LinkAnswers answers;

    public CalibrationTests()
    {
        answers = new LinkAnswers(LogExamples.Opened(new MemoryStore(50_000)), cable, loggerId: 1, bootCount: 1);
        SessionHeader header = new();
        for (int i = 0; i < 3; i++)
        {
            header.Pressures[i].Kind = ChannelKind.CurrentLoop;
            header.Pressures[i].ZeroCounts = 4000 + i;
            header.Pressures[i].SpanCounts = 16000;
        }

        answers.Calibrations.CopyFrom(header);
    }

    [Fact]
    public void The_logger_tells_what_it_works_by()
    {
        CalibrationAnswer held = Assert.IsType<CalibrationAnswer>(Ask(new GetCalibration { Channel = 2 }));
        Assert.Equal((2, ChannelKind.CurrentLoop, 4001, 16000, 0u), (held.Channel, held.Kind, held.ZeroCounts, held.SpanCounts, held.UtcSeconds));
        Assert.False(answers.Calibrations.Arrived);
    }

    [Fact]
    public void What_was_sent_is_held_for_that_channel_and_goes_into_the_next_header()
    {
        SendCalibration sent = new()
        {
            Channel = 3,
            Kind = ChannelKind.CurrentLoop,
            ZeroCounts = 3987,
            SpanCounts = 12800,
            SpanPascal = 2_758_000,
            AccuracyPascal = 17_000,
            UtcSeconds = 1_780_000_000,
            Transducer = "0-500 psi, no. 12",
            Reference = "gauge 7, certificate 31",
        };
        CalibrationAnswer held = Assert.IsType<CalibrationAnswer>(Ask(sent));
        Assert.Equal((sent.ZeroCounts, sent.SpanCounts, sent.SpanPascal, sent.Reference), (held.ZeroCounts, held.SpanCounts, held.SpanPascal, held.Reference));
        Assert.True(answers.Calibrations.Arrived);

        SessionHeader next = new();
        answers.Calibrations.CopyTo(next);
        Assert.Equal([4000, 4001, 3987], next.Pressures.Select(pressure => pressure.ZeroCounts));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(4, 1)]
    [InlineData(1, 0)]
    public void A_channel_or_a_span_that_cannot_be_is_refused_and_what_was_held_stays(int channel, int spanCounts)
    {
        Refusal refusal = Assert.IsType<Refusal>(Ask(new SendCalibration { Channel = (byte)channel, SpanCounts = spanCounts }));
        Assert.Equal((MessageCode.SendCalibration, RefusalReason.Malformed), (refusal.Request, refusal.Reason));
        Assert.False(answers.Calibrations.Arrived);
        Assert.Equal(4000, Assert.IsType<CalibrationAnswer>(Ask(new GetCalibration { Channel = 1 })).ZeroCounts);
        Assert.IsType<Refusal>(Ask(new GetCalibration { Channel = 4 }));
    }

    [Fact]
    public void It_answers_only_after_the_logger_had_a_step_to_keep_what_came()
    {
        foreach ((IMessage request, MessageCode answer) in ((IMessage, MessageCode)[])[
            (new SetClock { UtcSeconds = 5 }, MessageCode.ClockAnswer),
            (new SendPlan(new PlanRecord()), MessageCode.PlanAnswer),
            (new SendCalibration { Channel = 1, SpanCounts = 9 }, MessageCode.CalibrationAnswer)])
        {
            cable.Send(request);
            Assert.True(answers.Step(0, 0));
            Assert.True(answers.ClockArrived || answers.PlanArrived || answers.Calibrations.Arrived);
            Assert.Empty(cable.Receive());
            answers.ClockArrived = answers.PlanArrived = answers.Calibrations.Arrived = false;
            Assert.True(answers.Step(0, 0));
            Assert.Equal(answer, Assert.Single(cable.Receive()).Code);
        }
    }

    private IMessage Ask(IMessage request)
    {
        cable.Send(request);
        while (answers.Step(0, 0))
        {
        }

        return Assert.Single(cable.Receive());
    }
}
