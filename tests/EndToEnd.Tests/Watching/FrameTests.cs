using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.App.Watching;
using LoggerBox.App.Watching.Screen;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Live;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Demo;
using Xunit;

namespace LoggerBox.EndToEnd.Tests.Watching;

public class FrameTests
{
    // The bar stands for the screen's left edge.
    private const string Stall = """
        |
        | Engine speed, rpm                       Stall, seconds left
        |   #   ##  ###  ####                          #  #
        |  ##  #  #    # #                             #  #
        |   #   ###  ##  ###                           ####
        |   #     #    #    #                             #
        |  ###  ##  ###  ###                              #
        | 1820 to 2040: inside
        |
        | Main, psi                 Clutch, psi               Converter, psi
        |   #  #  # ####   ####       #  ###   ##     ##             #   ##     ##
        |  ##  #  #    #      #      ##     # #  #   #  #           ##  #  #   #  #
        |   #  ####   #      #        #   ##  #  #    ###            #   ###    ##
        |   #     #  #      #         #  #    #  #      #            #     #   #  #
        |  ###    #  #   #  #        ### ####  ##  #  ##            ###  ##  #  ##
        | 128.0 to 180.0: inside    122.0 to 180.0: LOW
        |
        | Gear: forward   Step: Stall, forward
        | Now: Stall long enough
        |
        | Captured: Engine off, no pressure; Idle, neutral; Idle, forward; Idle,
        | reverse; Full pedal, no load; Full pedal, work relief; Stall, forward; Hold
        | speed, neutral; Hold speed, forward; Hold speed, reverse
        | q ends   /dev/ttyUSB0   limits of sample-truck.toml
        """;

    private const string CutLine = """
        |
        | Engine speed, rpm
        |
        |
        |                ####
        |
        |
        |
        |
        | Main, psi                 Clutch, psi               Converter, psi
        |
        |
        |                     ####                      ####                      ####
        |
        |
        |
        |
        | Gear: unknown
        | The line on /dev/ttyUSB0 was cut: it may take 10 s to come back.
        |
        | Captured: nothing yet
        |
        |
        | q ends   /dev/ttyUSB0   limits of sample-truck.toml
        """;

    private const string SmallStall = """
        | Now: Stall long enough
        | Stall: 4.6 s left
        | Engine speed 1935 rpm (1820 to 2040: inside)
        | Main 147.7 psi (128.0 to 180.0: inside)
        | Clutch 120.9 psi (122.0 to 180.0: LOW)
        | Converter 19.8 psi
        | Gear: forward   Step: Stall, forward
        | Captured: Engine off, no pressure; Idle, neutral; Idle,
        | forward; Idle, reverse; Full pedal, no load; Full pedal,
        | q ends   /dev/ttyUSB0   limits of sample-truck.toml
        """;

    private static readonly DataSheet Sheet = DataSheetReader.Parse(SampleSheet.Text(), SampleSheet.FileName);

    // Loop currents in microamperes, 4 to 20 mA for 0 to 500 psi: 32 a psi.
    private static readonly ChannelCalibration Loop = new() { Kind = ChannelKind.CurrentLoop, ZeroCounts = 4000, SpanCounts = 16000, SpanPascal = 3_447_379 };

    /// <summary>A moment of `simulate --speed real --cause forward-clutch-leak`: the leaking clutch in a stall.</summary>
    private static readonly LiveReadings InAStall = new()
    {
        Sampling = true,
        Microseconds = 230_600_000,
        Speed = 19350,
        Main = 4000 + 4726,
        Clutch = 4000 + 3869,
        Converter = 4000 + 634,
        Gear = Gear.Forward,
        Step = Step.StallForward,
        StallMillisecondsLeft = 4620,
        Cue = Cue.StallTarget,
        CueMicroseconds = 230_200_000,
        StepsCaptured = 0b1110_1111_1110,
    };

    [Fact]
    public void A_stall_fills_a_terminal_of_80_by_24() => Assert.Equal(Stall, Text(View(InAStall), 80, 24));

    [Fact]
    public void A_larger_terminal_has_the_same_at_its_top_and_the_foot_at_its_end()
    {
        string[] lines = Frame.Lines(View(InAStall), 132, 40);
        Assert.Equal(40, lines.Length);
        Assert.Equal(Stall.Split('\n')[..20], Edged(lines[..20]).Split('\n'));
        Assert.Equal(Stall.Split('\n')[23], "|" + lines[39]);
    }

    [Fact]
    public void A_line_that_was_cut_leaves_no_reading_on_the_screen() =>
        Assert.Equal(CutLine, Text(Empty with { Sentence = App.Messages.LineCut("/dev/ttyUSB0", null, 10) }, 80, 24));

    [Fact]
    public void A_small_terminal_has_words_alone_and_the_most_urgent_first() => Assert.Equal(SmallStall, Text(View(InAStall), 60, 10));

    [Theory]
    [InlineData(80, 24)]
    [InlineData(79, 24)]
    [InlineData(80, 23)]
    [InlineData(20, 3)]
    [InlineData(1, 1)]
    public void No_frame_is_larger_than_the_terminal(int width, int height)
    {
        string[] lines = Frame.Lines(View(InAStall) with { Port = "/dev/\e[2J" + new string('x', 200) }, width, height);
        Assert.Equal(height, lines.Length);
        Assert.All(lines, line => Assert.InRange(line.Length, 0, width));
        Assert.DoesNotContain(string.Concat(lines), char.IsControl);
    }

    [Fact]
    public void Readings_that_the_figures_cannot_hold_stand_in_ordinary_size()
    {
        string frame = Text(View(new LiveReadings { Sampling = true, Speed = 7000, Main = short.MaxValue }, 10), 80, 24);
        Assert.Contains("8989.7", frame, StringComparison.Ordinal);
    }

    /// <summary>The last figure of each reading trembles: two frames a second of that are some hundred bytes.</summary>
    [Fact]
    public void Readings_that_tremble_cost_little_on_a_slow_line()
    {
        int[] costs = [.. Enumerable.Range(0, 10).SelectMany(_ => Enumerable.Range(0, 10), (one, other) =>
            ScreenChange.Between(Frame.Lines(Trembling(one), 80, 24), Frame.Lines(Trembling(other), 80, 24)).Length)];
        Assert.InRange(costs.Max(), 1, 300);
        Assert.InRange(costs.Average(), 1, 200);
    }

    [Fact]
    public void The_readme_shows_this_screen() => Assert.Contains(Stall, Edged(File.ReadAllLines(Readme.Fence.Page)), StringComparison.Ordinal);

    [Fact]
    public void A_plain_line_says_the_same() => Assert.Equal(
        "  230.6 s  Engine speed 1935 rpm (1820 to 2040: inside)  Main 147.7 psi (128.0 to 180.0: inside)  Clutch 120.9 psi (122.0 to 180.0: LOW)  Converter 19.8 psi  forward  Stall, forward  Stall: 4.6 s left  Stall long enough",
        PlainLines.Line(View(InAStall).Moment));

    private static WatchView Empty => new(LiveScale.Nothing(PressureUnit.Psi), "", "/dev/ttyUSB0", Sheet.FileName, HasKeys: true);

    private static WatchView View(LiveReadings readings, int times = 1)
    {
        ChannelCalibration[] loops = [.. Enumerable.Range(0, 3).Select(_ => new ChannelCalibration { Kind = Loop.Kind, ZeroCounts = Loop.ZeroCounts, SpanCounts = Loop.SpanCounts, SpanPascal = Loop.SpanPascal * times })];
        return Empty with { Moment = new LiveScale(loops, PressureUnit.Psi, new LiveLimits(Sheet, Sheet.Engine, PressureUnit.Psi)).Of(readings) };
    }

    // A tenth of a psi is 3.2 microamperes.
    private static WatchView Trembling(int tenths)
    {
        short counts = (short)(6090 + (tenths * 3.2));
        return View(new LiveReadings { Sampling = true, Speed = 7000 + (tenths * 10), Main = counts, Clutch = counts, Converter = counts, Gear = Gear.Neutral });
    }

    private static string Text(WatchView view, int width, int height) => Edged(Frame.Lines(view, width, height));

    private static string Edged(IEnumerable<string> lines) => string.Join('\n', lines.Select(line => "|" + line));
}
