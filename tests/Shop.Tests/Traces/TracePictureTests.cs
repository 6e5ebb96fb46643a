using System;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Traces;

/// <summary>The trace's picture under a mouse, and what it makes of holes.</summary>
[Collection(ShopCollection.Name)]
public sealed class TracePictureTests(OpenShop shop, Browser browser)
{
    [BrowserFact]
    public async Task A_stretch_that_is_drawn_over_with_the_mouse_fills_the_picture()
    {
        await using Visitor visitor = await Opened();
        LocatorBoundingBoxResult over = (await visitor.Page.Locator(".u-over").First.BoundingBoxAsync())!;
        (double from, double to) = await Shown(visitor);
        await visitor.Page.Mouse.MoveAsync(over.X + over.Width * 0.25f, over.Y + 20);
        await visitor.Page.Mouse.DownAsync();
        await visitor.Page.Mouse.MoveAsync(over.X + over.Width * 0.5f, over.Y + 20, new MouseMoveOptions { Steps = 5 });
        await visitor.Page.Mouse.UpAsync();
        (double left, double right) = await Changed(visitor, from, to);
        double point = (to - from) / over.Width;
        Assert.InRange(left, from + 0.25 * (to - from) - 2 * point, from + 0.25 * (to - from) + 2 * point);
        Assert.InRange(right, from + 0.5 * (to - from) - 2 * point, from + 0.5 * (to - from) + 2 * point);
    }

    [BrowserFact]
    public async Task The_wheel_zooms_round_the_place_that_is_pointed_at_and_the_lines_are_read_there()
    {
        await using Visitor visitor = await Opened();
        LocatorBoundingBoxResult over = (await visitor.Page.Locator(".u-over").First.BoundingBoxAsync())!;
        (double from, double to) = await Shown(visitor);
        double at = from + 0.75 * (to - from);
        await visitor.Page.Mouse.MoveAsync(over.X + over.Width * 0.75f, over.Y + 20);
        Assert.Matches(@"^[0-9.]+ s speed [0-9]+( to [0-9]+)? rpm main -?[0-9.]+( to -?[0-9.]+)? psi", (await visitor.Page.Locator(".readout").InnerTextAsync()).Replace(" \u00a0 ", " ", StringComparison.Ordinal));
        await visitor.Page.Mouse.WheelAsync(0, -100);
        (double left, double right) = await Changed(visitor, from, to);
        Assert.InRange(right - left, 0.79 * (to - from), 0.81 * (to - from));
        Assert.InRange(left + 0.75 * (right - left), at - 1, at + 1);
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task A_hole_in_a_recording_is_a_hole_in_the_line_and_a_missing_reading_too()
    {
        await using Visitor visitor = await Opened();
        JsonElement table = (await visitor.Page.EvaluateAsync("""
            () => {
              const bytes = new ArrayBuffer(8 + 3 * 8 + 3 * 12 * 4);
              new DataView(bytes).setInt32(0, 3, true);
              new Float64Array(bytes, 8, 3).set([1, 1.02, 9]);
              const values = new Float32Array(bytes, 32);
              values.fill(5);
              values[1] = values[4] = values[7] = NaN;
              return TraceWindow.read(bytes, 0.01, 0, 10).tables[0];
            }
            """))!.Value;
        double?[] Row(int row) => [.. table[row].EnumerateArray().Select(value => value.ValueKind == JsonValueKind.Null ? (double?)null : value.GetDouble())];
        Assert.Equal([1, 1.02, 5.01, 9], Row(0));
        Assert.Equal([5, null, null, 5], Row(1));
        Assert.Equal([5, 5, null, 5], Row(4));
    }

    [BrowserFact]
    public async Task While_a_hand_turns_the_wheel_few_columns_are_drawn_and_no_extreme_is_lost()
    {
        await using Visitor visitor = await Opened();
        JsonElement drawn = (await visitor.Page.EvaluateAsync("""
            () => {
              const table = [[]];
              for (let line = 1; line <= 12; line++) { table.push([]); }
              for (let i = 0; i < 1000; i++) {
                const isHole = i === 333 || i === 700;
                table[0].push(i / 10);
                for (let channel = 0; channel < 4; channel++) {
                  const middle = 100 * channel + Math.sin(i);
                  const values = isHole || (channel === 2 && i % 7 === 0) ? [null, null, null] : [middle - 1, middle + 1, middle];
                  values.forEach((value, n) => table[3 * channel + 1 + n].push(value));
                }
              }
              table[2][501] = 9999;
              table[4][502] = -9999;
              const window = { tables: [table] };
              const ends = (table, line) => [Math.min(...table[line].filter(one => one !== null)), Math.max(...table[line].filter(one => one !== null))];
              const few = TraceWindow.table(window, 0, 100, 300);
              return {
                count: few[0].length, same: few.every(line => line.length === few[0].length), isRising: few[0].every((x, i) => i === 0 || x > few[0][i - 1]),
                holes: few[0].filter((x, i) => few[1][i] === null).map(x => Math.round(10 * x)),
                ends: few.slice(1).map((_, n) => ends(few, n + 1)), all: table.slice(1).map((_, n) => ends(table, n + 1)),
                close: TraceWindow.table(window, 10, 30, 300) === table, again: TraceWindow.table(window, 0, 100, 300) === few,
              };
            }
            """))!.Value;
        Assert.InRange(drawn.GetProperty("count").GetInt32(), 150, 300);
        Assert.True(drawn.GetProperty("same").GetBoolean() && drawn.GetProperty("isRising").GetBoolean());
        Assert.Equal([333, 700], drawn.GetProperty("holes").EnumerateArray().Select(hole => hole.GetInt32()));
        JsonElement[] kept = [.. drawn.GetProperty("ends").EnumerateArray()];
        JsonElement[] all = [.. drawn.GetProperty("all").EnumerateArray()];
        for (int line = 0; line < all.Length; line++)
        {
            // Lows, highs, means: the lowest of the lows and the highest of the highs stay, means may draw together.
            int end = line % 3;
            Assert.True(end == 2 || kept[line][end].GetDouble() == all[line][end].GetDouble());
        }

        Assert.True(drawn.GetProperty("close").GetBoolean() && drawn.GetProperty("again").GetBoolean());
    }

    private async Task<Visitor> Opened()
    {
        Visitor visitor = await browser.Visit(shop, "/job/J1#trace-S1");
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('.figure').dataset.shown");
        await visitor.Page.EvaluateAsync("document.querySelector('.strips').scrollIntoView()");
        return visitor;
    }

    private static async Task<(double From, double To)> Changed(Visitor visitor, double from, double to)
    {
        await visitor.Page.WaitForFunctionAsync("before => document.querySelector('.figure').dataset.shown !== before", FormattableString.Invariant($"{from} {to}"));
        return await Shown(visitor);
    }

    private static async Task<(double From, double To)> Shown(Visitor visitor)
    {
        string[] ends = (await visitor.Page.Locator(".figure").GetAttributeAsync("data-shown"))!.Split(' ');
        return (double.Parse(ends[0], CultureInfo.InvariantCulture), double.Parse(ends[1], CultureInfo.InvariantCulture));
    }
}
