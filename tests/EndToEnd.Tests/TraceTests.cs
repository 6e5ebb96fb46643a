using System;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Json;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class TraceTests
{
    public static TheoryData<string> Names => [.. Recordings.All];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_recorded_session_is_judged_rightly(string name)
    {
        CommandResult result = LoggerBoxCommand.Run("judge", Recordings.Trace(name), "--sheet", Recordings.Sheet(name), "--json").Expect(0);
        var judgement = new JudgementText(result.Out);
        string named = judgement.Leading.Length == 0 ? "healthy" : judgement.Leading;
        Assert.True(Recordings.RightAnswers(name).Contains(named), $"{name}: {judgement.Root.GetProperty("suspects")}");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Ten_rows_a_second_are_enough(string name) =>
        AssertRight(name, Judged(Thinned, name));

    [Theory]
    [MemberData(nameof(Names))]
    public void Without_any_tag_the_cause_is_named_all_the_same(string name) =>
        AssertRight(name, Judged(WithoutTags, name));

    [Theory]
    [MemberData(nameof(Names))]
    public void Ten_rows_a_second_without_any_tag_are_enough(string name) =>
        AssertRight(name, Judged(lines => WithoutTags(Thinned(lines)), name));

    [Theory]
    [InlineData("r.html")]
    [InlineData("r.pdf")]
    public void A_report_says_first_what_it_comes_to(string name)
    {
        using var bench = new Workbench();
        string file = bench.At(name);
        CommandResult result = LoggerBoxCommand.Run("report", Recordings.Trace("pump-worn"), "--sheet", Recordings.Sheet("pump-worn"), "--out", file).Expect(0);
        Assert.Matches("^==> Suspects?: charge pump worn", result.Out);
        Assert.EndsWith($"\nWrote {file}\n", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_has_the_shape_that_others_rely_on()
    {
        CommandResult result = LoggerBoxCommand.Run("judge", Recordings.Trace("forward-clutch-leak"), "--sheet", Recordings.Sheet("forward-clutch-leak"), "--json").Expect(0);
        JsonElement root = new JudgementText(result.Out).Root;
        Assert.Equal(
            ["format", "rules", "unit", "truck", "sheet", "validity", "holds", "engagements", "checks", "suspects", "not_covered"],
            root.EnumerateObject().Select(member => member.Name));
        Assert.Equal("loggerbox-judgement/1", root.GetProperty("format").GetString());
        Assert.Equal("forward-clutch-leak.sheet.toml", root.GetProperty("sheet").GetProperty("name").GetString());
        Assert.Equal(["code", "effect", "step", "text"], Members(root.GetProperty("validity")[0]));
        Assert.Equal(["step", "gear", "start_s", "duration_s", "counts", "rpm", "main", "clutch", "converter"], Members(root.GetProperty("holds")[0]));
        Assert.Equal(["settled", "peak", "uncertainty"], Members(root.GetProperty("holds")[0].GetProperty("rpm")));
        Assert.Equal(["gear", "start_s", "fill_s", "rise_s", "total_s", "overshoot_percent"], Members(root.GetProperty("engagements")[0]));
        Assert.Equal(["step", "quantity", "value", "uncertainty", "unit", "min", "max", "verdict"], Members(root.GetProperty("checks")[0]));
        Assert.Equal(["code", "rank", "score", "for", "against", "next"], Members(root.GetProperty("suspects")[0]));
        Assert.Equal(
            ["stator-seized", "brake-dragging", "axle-fault", "lubrication-starved", "clutch-dragging", "wrong-fluid"],
            root.GetProperty("not_covered").EnumerateArray().Select(one => one.GetProperty("code").GetString()));
    }

    [Fact]
    public void A_missing_column_is_not_measured_and_the_rest_is_judged()
    {
        JudgementText judgement = Judged(lines => Columns(lines, row => [row[0], row[1], row[2], row[4], row[5]]));
        Assert.All(judgement.Verdicts("clutch"), verdict => Assert.Equal("not-measured", verdict));
        Assert.NotEmpty(judgement.Verdicts("clutch"));
        Assert.Contains("in", judgement.Verdicts("rpm"));
        Assert.Contains(judgement.Verdicts("main"), verdict => verdict != "not-measured");
        Assert.Contains("incomplete", judgement.Validity);
        Assert.Equal(JsonValueKind.Null, judgement.Hold("hold-F").GetProperty("clutch").ValueKind);
    }

    [Fact]
    public void A_gap_costs_what_it_covers_and_nothing_else()
    {
        JudgementText whole = Judged(lines => lines);
        double start = whole.Hold("hold-F").GetProperty("start_s").GetDouble();
        double end = start + whole.Hold("hold-F").GetProperty("duration_s").GetDouble();
        JudgementText cut = Judged(lines => [.. lines.Where(line => !(Second(line) > start - 6 && Second(line) < end + 1))]);
        Assert.DoesNotContain("hold-F", cut.StepsThatCount);
        Assert.Contains("incomplete", cut.Validity);
        Assert.Contains("hold-R", cut.StepsThatCount);
    }

    [Fact]
    public void A_byte_order_mark_carriage_returns_comments_and_an_unknown_column_change_nothing()
    {
        using var bench = new Workbench();
        string[] lines = Recordings.Lines("forward-clutch-leak");
        var text = new StringBuilder("\uFEFF# recorded by another instrument\r\n");
        text.AppendJoin("\r\n", lines.Select((line, row) => line + (row == 0 ? ",battery_V" : ",13.8"))).Append("\r\n");
        CommandResult result = LoggerBoxCommand.Run(
            "judge", bench.Write("t.csv", text.ToString()), "--sheet", Recordings.Sheet("forward-clutch-leak"), "--json").Expect(0);
        CommandResult plain = LoggerBoxCommand.Run("judge", Recordings.Trace("forward-clutch-leak"), "--sheet", Recordings.Sheet("forward-clutch-leak"), "--json").Expect(0);
        Assert.Equal(plain.Out, result.Out);
        Assert.Contains("battery_V", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-100)]
    [InlineData(0.037)]
    [InlineData(1.7e9)]
    public void Where_the_recording_counts_its_seconds_from_changes_nothing(double offset)
    {
        string Moved(string line) => (Second(line) + offset).ToString("F3", CultureInfo.InvariantCulture) + line[line.IndexOf(',', StringComparison.Ordinal)..];
        JudgementText moved = Judged(lines => [lines[0], .. lines.Skip(1).Select(Moved)]);
        Assert.Equal(Judged(lines => lines).Root.GetRawText(), moved.Root.GetRawText());
        Assert.Equal(0, moved.Root.GetProperty("holds")[0].GetProperty("start_s").GetDouble());
    }

    [Fact]
    public void Loop_currents_are_judged_with_their_ranges_and_refused_without()
    {
        using var bench = new Workbench();
        string[] lines = Recordings.Lines("forward-clutch-leak");
        string MilliAmpere(string cell) => cell.Length == 0 ? "" : (4 + 16 * Number(cell) / 35).ToString("F4", CultureInfo.InvariantCulture);
        string trace = bench.Write("loop.csv", string.Join('\n', lines.Select((line, row) =>
        {
            string[] cells = line.Split(',');
            return row == 0
                ? line.Replace("_kgfcm2", "_mA", StringComparison.Ordinal)
                : string.Join(',', [cells[0], cells[1], MilliAmpere(cells[2]), MilliAmpere(cells[3]), MilliAmpere(cells[4]), .. cells[5..]]);
        })));
        Assert.Contains("main_kgfcm2", lines[0], StringComparison.Ordinal);
        string[] call = ["judge", trace, "--sheet", Recordings.Sheet("forward-clutch-leak"), "--json", "--range-main", "0..35kgfcm2", "--range-clutch", "0..35kgfcm2"];
        LoggerBoxCommand.Run(call).Refused(2, "converter_mA", "--range-converter");
        var judgement = new JudgementText(LoggerBoxCommand.Run([.. call, "--range-converter", "0..35kgfcm2"]).Expect(0).Out);
        Assert.Contains(judgement.Leading, Recordings.RightAnswers("forward-clutch-leak"));
    }

    [Fact]
    public void Pickup_edges_stand_in_for_the_speed_column()
    {
        using var bench = new Workbench();
        string[] lines = Recordings.Lines("healthy");
        string trace = bench.Write("t.csv", string.Join('\n', Columns(lines, row => [row[0], .. row[2..]])));
        string edges = bench.Write("edges.txt", EdgesOf(lines));
        CommandResult result = LoggerBoxCommand.Run(
            "judge", trace, "--pulses", edges, "--pulses-per-rev", "0.5", "--sheet", Recordings.Sheet("healthy"), "--json").Expect(0);
        var judgement = new JudgementText(result.Out);
        JudgementText direct = Judged(all => all, "healthy");
        double Stall(JudgementText one) => one.Hold("stall-F").GetProperty("rpm").GetProperty("settled").GetDouble();
        Assert.Equal(Stall(direct), Stall(judgement), 10.0);
        Assert.Empty(judgement.First);
    }

    private static string[] Thinned(string[] lines) => [lines[0], .. lines.Skip(1).DistinctBy(line => Math.Floor(Second(line) * 10))];

    // The tags are the last two columns.
    private static string[] WithoutTags(string[] lines) => Columns(lines, row => row[..5]);

    private static void AssertRight(string name, JudgementText judgement)
    {
        string[] named = judgement.First.Count == 0 ? ["healthy"] : [.. judgement.First];
        Assert.True(Recordings.RightAnswers(name).Overlaps(named), $"{name}: {judgement.Root.GetProperty("suspects")}");
    }

    private static JudgementText Judged(Func<string[], string[]> change, string name = "forward-clutch-leak")
    {
        using var bench = new Workbench();
        string trace = bench.Write("t.csv", string.Join('\n', change(Recordings.Lines(name))));
        return new JudgementText(LoggerBoxCommand.Run("judge", trace, "--sheet", Recordings.Sheet(name), "--json").Expect(0).Out);
    }

    /// <summary>One edge each second turn, as the plug lead of a four-stroke gives them.</summary>
    private static string EdgesOf(string[] lines)
    {
        var edges = new StringBuilder();
        double turns = 0;
        double next = 2;
        double last = Second(lines[1]);
        double speed = 0;
        foreach (string line in lines.Skip(1))
        {
            string[] cells = line.Split(',');
            double now = Number(cells[0]);
            speed = cells[1].Length == 0 ? speed : Math.Max(0, Number(cells[1]));
            double turned = speed / 60 * (now - last);
            for (; turned > 0 && turns + turned >= next; next += 2)
            {
                edges.Append(CultureInfo.InvariantCulture, $"{last + (next - turns) / turned * (now - last):F6}\n");
            }

            turns += turned;
            last = now;
        }

        return edges.ToString();
    }

    private static string[] Columns(string[] lines, Func<string[], string[]> keep) => [.. lines.Select(line => string.Join(',', keep(line.Split(','))))];

    private static double Second(string line) => double.TryParse(line.Split(',')[0], CultureInfo.InvariantCulture, out double second) ? second : double.NaN;

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    private static string[] Members(JsonElement element) => [.. element.EnumerateObject().Select(member => member.Name)];
}
