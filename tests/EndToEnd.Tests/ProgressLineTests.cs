using System;
using System.IO;
using System.Linq;
using System.Threading;
using LoggerBox.App.Console;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class ProgressLineTests
{
    private TimeSpan now;

    [Fact]
    public void What_is_done_within_a_second_says_nothing()
    {
        Assert.Empty(Written(redraws: true, milliseconds: 900, step: 100));
        Assert.Empty(Written(redraws: false, milliseconds: 900, step: 100));
    }

    /// <summary>ECMA-48: carriage return, then CSI K erases to the end of the line.</summary>
    [Fact]
    public void On_a_terminal_one_line_is_drawn_again_and_wiped()
    {
        string written = Written(redraws: true, milliseconds: 10_000, step: 10);
        Assert.DoesNotContain('\n', written);
        string[] drawings = written.Split("\r\u001b[K");
        Assert.InRange(drawings.Length - 2, 23, 1 + (9_000 / 200));
        Assert.Equal("", drawings[0]);
        Assert.Equal("", drawings[^1]);
        Assert.Contains("Session 7: 500 of 1000 kB, 100.0 kB/s, 5 s left", drawings);
        Assert.All(drawings, drawing => Assert.InRange(drawing.Length, 0, 79));
    }

    [Fact]
    public void In_a_pipe_there_is_a_plain_line_every_five_seconds()
    {
        string[] lines = Written(redraws: false, milliseconds: 10_000, step: 10).TrimEnd('\n').Split('\n');
        Assert.Equal(["Session 7: 100 of 1000 kB, 100.0 kB/s, 9 s left", "Session 7: 600 of 1000 kB, 100.0 kB/s, 4 s left"], lines);
    }

    [Fact]
    public void What_was_there_at_the_beginning_counts_for_no_rate()
    {
        using StringWriter error = new();
        var line = new ProgressLine(error, redraws: false, () => now);
        line.Show("Session 8", 900_000, 1_000_000, isBytes: true);
        now = TimeSpan.FromSeconds(2);
        line.Show("Session 8", 920_000, 1_000_000, isBytes: true);
        Assert.Equal("Session 8: 920 of 1000 kB, 10.0 kB/s, 8 s left\n", error.ToString().ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Work_that_cannot_tell_how_far_it_is_shows_for_how_long_it_goes_on()
    {
        using StringWriter error = new() { NewLine = "\n" };
        var line = new ProgressLine(error, redraws: false, () => now);
        line.Show("Judging job J1");
        now = TimeSpan.FromSeconds(0.9);
        line.Show("Judging job J1");
        Assert.Empty(error.ToString());
        now = TimeSpan.FromSeconds(2.4);
        line.Show("Judging job J1");
        Assert.Equal("Judging job J1: 2 s so far\n", error.ToString());
    }

    [Fact]
    public void Long_work_is_seen_while_it_goes_on_and_nothing_of_it_is_left()
    {
        using StringWriter error = new();
        TextWriter shared = TextWriter.Synchronized(error);
        var line = new ProgressLine(shared, redraws: true);
        bool IsSeen()
        {
            lock (shared)
            {
                return error.ToString().Contains("Judging job J1: 1 s so far", StringComparison.Ordinal);
            }
        }

        int answer = line.During("Judging job J1", () =>
        {
            Assert.True(SpinWait.SpinUntil(IsSeen, TimeSpan.FromSeconds(30)));
            return 42;
        });
        Assert.Equal(42, answer);
        Assert.EndsWith("\r\u001b[K", error.ToString(), StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => line.During<int>("Judging job J1", () => throw new InvalidOperationException()));
    }

    private string Written(bool redraws, int milliseconds, int step)
    {
        now = TimeSpan.Zero;
        using StringWriter error = new() { NewLine = "\n" };
        var line = new ProgressLine(error, redraws, () => now);
        for (int passed = 0; passed <= milliseconds; passed += step)
        {
            now = TimeSpan.FromMilliseconds(passed);
            line.Show("Session 7", passed * 100L, 1_000_000, isBytes: true);
        }

        line.Wipe();
        return error.ToString();
    }
}
