using System;
using System.Threading;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using Xunit;

namespace LoggerBox.Host.Tests.Link;

/// <summary>What answers is no logger, or none that this program understands. A real pseudo-terminal, and something else than a logger behind it.</summary>
public class BadLineTests
{
    private static readonly TimeSpan Short = TimeSpan.FromMilliseconds(60);
    private static readonly LinkTiming Quick = new(Short * 2, Short * 4, Short);
    private static readonly LinkTiming Patient = Quick with { Answer = TimeSpan.FromSeconds(5) };
    private static readonly LinkTiming LongEnoughToHearIt = Quick with { Answer = TimeSpan.FromMilliseconds(500) };

    [Fact]
    public void Silence_ends_with_a_sentence()
    {
        using PseudoTerminal terminal = PseudoTerminal.Open();
        Assert.Contains($"No logger answers on {terminal.PortName}", Refusal(terminal.PortName, line => line.Hello()), StringComparison.Ordinal);
    }

    [Fact]
    public void Noise_without_end_ends_with_a_sentence()
    {
        Random random = new(31);
        using Sender noise = new((device, buffer) =>
        {
            random.NextBytes(buffer);
            return buffer.Length;
        });
        string refusal = Refusal(noise.Port, line => line.Hello(), LongEnoughToHearIt);
        Assert.Contains($"What comes in on {noise.Port} is no logger's", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void The_right_frames_without_end_but_never_the_answer_end_with_a_sentence()
    {
        using Sender babble = Repeating(new Confirmed { SessionNumber = 5 });
        Assert.Contains("gives no answer to the greeting", Refusal(babble.Port, line => line.Hello(), LongEnoughToHearIt), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_data_without_end_is_taken_once_and_ends_with_a_sentence()
    {
        using Sender repeating = Repeating(new Data { Tag = 1, Offset = 0, Length = 100 });
        using HostLine line = HostLine.Open(repeating.Port);
        long taken = 0;

        LoggerConnection connection = new(line, Quick with { Silence = TimeSpan.FromSeconds(1) });
        UserErrorException error = Assert.Throws<UserErrorException>(() => connection.Fetch(1, [new Host.Sessions.ByteRange(0, 5000)], data => taken += data.Length));

        Assert.Equal(100, taken);
        Assert.Contains("4900 bytes are missing", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "newer program")]
    [InlineData(0, "newer logger firmware")]
    public void A_logger_of_another_version_is_refused_with_what_to_install(int version, string remedy)
    {
        using Sender other = Repeating(new HelloAnswer { Version = (ushort)version, RecordVersion = 1 });
        string refusal = Refusal(other.Port, line => line.Hello(), Patient);
        Assert.Contains($"speaks link version {version}", refusal, StringComparison.Ordinal);
        Assert.Contains(remedy, refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refused_request_says_why()
    {
        using Sender refusing = Repeating(new Refusal { Request = MessageCode.SendPlan, Reason = RefusalReason.UnknownRequest });
        string refusal = Refusal(refusing.Port, line => line.SendPlan(new Protocol.Records.PlanRecord()), Patient);
        Assert.Contains("refused the plan", refusal, StringComparison.Ordinal);
        Assert.Contains("does not know the request", refusal, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/dev/no-such-port", "no port /dev/no-such-port")]
    [InlineData("/dev/null", "/dev/null cannot be opened as a serial port")]
    [InlineData("tcp:127.0.0.1:1", "Nothing can be reached at tcp:127.0.0.1:1")]
    public void A_dead_port_is_named(string port, string sentence)
    {
        UserErrorException error = Assert.Throws<UserErrorException>(() => HostLine.Open(port));
        Assert.Contains(sentence, error.Message, StringComparison.Ordinal);
        Assert.False(error.Usage);
    }

    [Theory]
    [InlineData("tcp:")]
    [InlineData("tcp:127.0.0.1")]
    [InlineData("tcp:127.0.0.1:0")]
    [InlineData("tcp:127.0.0.1:70000")]
    [InlineData("tcp:192.0.2.7:4000")]
    [InlineData("tcp:localhost:4000")]
    public void Only_loopback_with_a_number_is_a_tcp_port(string port)
    {
        UserErrorException error = Assert.Throws<UserErrorException>(() => HostLine.Open(port));
        Assert.Contains(port, error.Message, StringComparison.Ordinal);
        Assert.True(error.Usage);
    }

    private static string Refusal(string port, Action<LoggerConnection> request, LinkTiming? timing = null)
    {
        using HostLine line = HostLine.Open(port);
        return Assert.Throws<UserErrorException>(() => request(new LoggerConnection(line, timing ?? Quick))).Message;
    }

    private static Sender Repeating(IMessage message)
    {
        FrameEncoder encoder = new();
        int length = encoder.Encode(message);
        return new Sender((_, buffer) =>
        {
            encoder.Frame.AsSpan(0, length).CopyTo(buffer);
            return length;
        });
    }

    /// <summary>Sends and sends, and listens to nothing.</summary>
    private sealed class Sender : IDisposable
    {
        private readonly PseudoTerminal terminal = PseudoTerminal.Open();
        private readonly Thread thread;
        private volatile bool stopped;

        public Sender(Func<PseudoTerminal, byte[], int> fill)
        {
            byte[] buffer = new byte[FrameFormat.MaxFrame];
            byte[] heard = new byte[4096];
            thread = new Thread(() =>
            {
                while (!stopped)
                {
                    int length = fill(terminal, buffer);
                    int sent = 0;
                    while (sent < length && !stopped)
                    {
                        sent += terminal.Write(buffer, sent, length - sent);
                        terminal.Read(heard, 0, heard.Length, 0);
                    }
                }
            });
            thread.Start();
        }

        public string Port => terminal.PortName;

        public void Dispose()
        {
            stopped = true;
            thread.Join();
            terminal.Dispose();
        }
    }
}
