using System;
using System.Net;
using System.Net.Sockets;
using System.Threading;
using System.Threading.Tasks;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class RefusalTests
{
    private const string Head = "time_s,rpm,main_psi,clutch_psi,converter_psi,gear,step\n";

    [Theory]
    [InlineData("time going back", Head + "0.1,700,60,0,9,N,\n0.05,700,60,0,9,N,\n", 3)]
    [InlineData("time standing still", Head + "0.1,700,60,0,9,N,\n0.1,700,60,0,9,N,\n", 3)]
    [InlineData("an unknown unit", "time_s,rpm,main_furlong\n0.1,700,60\n", 1)]
    [InlineData("text for a reading", Head + "0.1,fast,60,0,9,N,\n", 2)]
    [InlineData("NaN for a reading", Head + "0.1,NaN,60,0,9,N,\n", 2)]
    [InlineData("an infinite reading", Head + "0.1,700,inf,0,9,N,\n", 2)]
    [InlineData("a number out of any range", Head + "0.1,700,9e9,0,9,N,\n", 2)]
    [InlineData("a negative speed", Head + "0.1,-700,60,0,9,N,\n", 2)]
    [InlineData("a broken quote", Head + "0.1,\"700,60,0,9,N,\n", 2)]
    [InlineData("a row too short", Head + "0.1,700,60,0,9,N,\n0.2,700\n", 3)]
    [InlineData("a column twice", "time_s,rpm,rpm\n0.1,700,700\n", 1)]
    [InlineData("no time", "rpm,main_psi\n700,60\n", 1)]
    [InlineData("a gear that is none", Head + "0.1,700,60,0,9,X,\n", 2)]
    [InlineData("a step that is none", Head + "0.1,700,60,0,9,N,warm-up\n", 2)]
    [InlineData("no rows", Head, 1)]
    [InlineData("nothing at all", "", 1)]
    public void A_trace_with_this_is_refused_by_file_and_line_and_nothing_is_imported(string what, string text, int line)
    {
        using var bench = new Workbench();
        string trace = bench.Write("bad.csv", text);
        CommandResult judged = LoggerBoxCommand.Run("judge", trace, "--sheet", Recordings.Sheet("healthy"), "--json");
        judged.Refused(1, "bad.csv", $"line {line}");
        Assert.True(judged.Out.Length == 0, what);
        LoggerBoxCommand.Run("import", trace, "--archive", bench.Archive).Refused(1, "bad.csv", $"line {line}");
        Assert.Equal(["bad.csv"], bench.Files());
    }

    [Fact]
    public void A_file_that_is_not_there_or_cannot_be_written_is_named()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("judge", bench.At("none.csv"), "--sheet", Recordings.Sheet("healthy")).Refused(1, "none.csv");
        LoggerBoxCommand.Run("judge", bench.At("none.csv")).Refused(1, "none.csv", "cannot be read");
        LoggerBoxCommand.Run("judge", Recordings.Trace("healthy"), "--sheet", bench.At("none.toml")).Refused(1, "none.toml");
        LoggerBoxCommand.Run("judge", Recordings.Trace("healthy")).Refused(1, "healthy.csv", "--sheet");
        LoggerBoxCommand.Run("report", Recordings.Trace("healthy"), "--sheet", Recordings.Sheet("healthy"), "--out", bench.At("none/r.html")).Refused(1, "r.html");
        Assert.Empty(bench.Files());
    }

    [Fact]
    public void A_device_without_end_is_given_up_by_name()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        LoggerBoxCommand.Run("judge", "/dev/zero", "--sheet", Recordings.Sheet("healthy")).Refused(1, "/dev/zero does not end");
        LoggerBoxCommand.Run("judge", Recordings.Trace("healthy"), "--sheet", "/dev/zero").Refused(1, "/dev/zero does not end");
        LoggerBoxCommand.Run("judge", Recordings.Trace("healthy"), "--sheet", Recordings.Sheet("healthy"), "--pulses", "/dev/zero").Refused(2, "--pulses");
    }

    [Fact]
    public void A_dead_port_is_named_and_leaves_no_archive()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("fetch", "--port", bench.At("ttyNONE"), "--archive", bench.Archive).Refused(1, "ttyNONE");
        LoggerBoxCommand.Run("fetch", "--port", "tcp:127.0.0.1:1", "--archive", bench.Archive).Refused(1, "tcp:127.0.0.1:1");
        LoggerBoxCommand.Run("plan", "send", Recordings.Sheet("healthy"), "--port", bench.At("ttyNONE")).Refused(1, "ttyNONE");
        Assert.Empty(bench.Files());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_line_that_sends_noise_or_nothing_is_given_up_with_a_sentence(bool noise)
    {
        using var bench = new Workbench();
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        using var stop = new CancellationTokenSource();
        Task babble = Babble(listener, noise, stop.Token);
        string port = $"tcp:{listener.LocalEndpoint}";
        LoggerBoxCommand.Run("fetch", "--port", port, "--archive", bench.Archive).Refused(1, port);
        Assert.Empty(bench.Files());
        await stop.CancelAsync();
        await babble;
    }

    private static async Task Babble(TcpListener listener, bool noise, CancellationToken stop)
    {
        var chance = new Random(4711);
        byte[] bytes = new byte[512];
        try
        {
            using Socket visitor = await listener.AcceptSocketAsync(stop);
            while (true)
            {
                chance.NextBytes(bytes);
                if (noise)
                {
                    await visitor.SendAsync(bytes, stop);
                }

                await Task.Delay(10, stop);
            }
        }
        catch (Exception error) when (error is OperationCanceledException or SocketException)
        {
            // The other side has gone, or the test is over.
        }
    }
}
