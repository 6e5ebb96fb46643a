using System.Linq;
using System.Net;
using System.Net.Http;
using System.Text;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Pages;

[Collection(ShopCollection.Name)]
public sealed class SubjectPageTests(OpenShop shop, Browser browser)
{
    [BrowserFact]
    public async Task What_it_comes_to_stands_on_the_first_screen_in_large_letters()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        ILocator outcome = visitor.Page.Locator("#outcome");
        Assert.Contains("forward clutch circuit leaks", await outcome.InnerTextAsync());
        LocatorBoundingBoxResult box = (await outcome.BoundingBoxAsync())!;
        Assert.InRange(box.Y + box.Height, 0, 600);

        // Letters of a 250th of the distance are read at ease (ISO 9241-303, 16 to 22 minutes of arc and more): 8 mm at two metres, 30 px at 96 a inch.
        Assert.True(await outcome.EvaluateAsync<double>("element => parseFloat(getComputedStyle(element).fontSize)") >= 30);
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task Each_reading_has_its_verdict_as_a_word_and_a_sign()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        ILocator low = visitor.Page.Locator("table.readings tr.outside", new PageLocatorOptions { HasText = "clutch pressure" }).First;
        Assert.Contains("▼ LOW", await low.InnerTextAsync());
        Assert.Contains("✓ in limits", await visitor.Page.Locator("table.readings").InnerTextAsync());
    }

    [BrowserFact]
    public async Task The_trace_is_folded_until_it_is_asked_for_and_zooms()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        Assert.Equal(0, await visitor.Page.Locator(".u-over").CountAsync());
        await visitor.Page.Locator("details.trace summary").ClickAsync();
        await visitor.Page.WaitForFunctionAsync("() => performance.getEntriesByName('trace-drawn').length === 1 && document.querySelector('.figure').dataset.shown");
        Assert.Equal(2, await visitor.Page.Locator(".u-over").CountAsync());
        (double from, double to) whole = await Shown(visitor);
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Zoom in" }).ClickAsync();
        (double from, double to) half = await Changed(visitor, whole);
        Assert.Equal((whole.to - whole.from) / 2, half.to - half.from, 3);
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task The_trace_is_moved_and_zoomed_by_keyboard_alone()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        await visitor.Page.Locator("details.trace summary").FocusAsync();
        await visitor.Page.Keyboard.PressAsync("Enter");
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('.figure').dataset.shown");
        (double from, double to) whole = await Shown(visitor);
        await visitor.Page.Keyboard.PressAsync("Tab");
        await visitor.Page.Keyboard.PressAsync("+");
        (double from, double to) half = await Changed(visitor, whole);
        await visitor.Page.Keyboard.PressAsync("ArrowRight");
        (double from, double to) moved = await Changed(visitor, half);
        Assert.Equal(half.from + 0.2 * (half.to - half.from), moved.from, 3);
        await visitor.Page.Keyboard.PressAsync("0");
        Assert.Equal(whole, await Changed(visitor, moved));

        // Read without a pointer: one moment, then the one beside it.
        await visitor.Page.Keyboard.PressAsync("Shift+ArrowRight");
        string first = await visitor.Page.Locator(".readout").InnerTextAsync();
        Assert.Matches(@"^[0-9.]+ s.*speed [0-9]+.*rpm.*main", first);
        await visitor.Page.Keyboard.PressAsync("Shift+ArrowRight");
        string next = await visitor.Page.Locator(".readout").InnerTextAsync();
        double Second(string text) => double.Parse(text.Split(' ')[0]);
        Assert.True(Second(next) > Second(first));
        Assert.Equal(whole, await Shown(visitor));
    }

    [BrowserFact]
    public async Task A_step_in_the_table_leads_to_its_hold_in_the_trace()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        await visitor.Page.Locator("button[data-step='hold-F']").ClickAsync();
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('.figure').dataset.shown");
        Assert.Equal("3 Hold speed, forward", await visitor.Page.Locator(".readout").InnerTextAsync());
        (double from, double to) = await Shown(visitor);
        Assert.InRange(to - from, 6, 120);
    }

    [BrowserFact]
    public async Task Every_hold_has_a_number_and_the_numbers_are_explained()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        await visitor.Page.Locator("details.trace summary").ClickAsync();
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('.figure').dataset.shown");
        string key = await visitor.Page.Locator(".key.holds").InnerTextAsync();
        int holds = await visitor.Page.EvaluateAsync<int>("JSON.parse(document.querySelector('details.trace').dataset.about).holds.length");
        Assert.True(holds >= 10);
        Assert.Equal(Enumerable.Range(1, holds), key.Split(" · ").Select(part => int.Parse(part.Split(' ')[0])));
        Assert.Contains("Stall, forward", key);
    }

    [BrowserFact]
    public async Task The_report_is_there_as_paper_and_a_table_is_of_one_session()
    {
        using HttpClient client = await shop.Visit();
        byte[] paper = await client.GetByteArrayAsync("/report/J1/pdf");
        Assert.Equal("%PDF-", Encoding.ASCII.GetString(paper[..5]));
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        Assert.Equal("/report/J1/pdf", await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Report as PDF" }).GetAttributeAsync("href"));

        using HttpResponseMessage several = await client.GetAsync("/export/J3");
        Assert.Equal(HttpStatusCode.NotFound, several.StatusCode);
        Assert.Contains("A table is of one recording, and job J", WebUtility.HtmlDecode(await several.Content.ReadAsStringAsync()));
        (await client.GetAsync("/export/S1")).EnsureSuccessStatusCode();
    }

    private static async Task<(double From, double To)> Shown(Visitor visitor)
    {
        string shown = await visitor.Page.Locator(".figure").GetAttributeAsync("data-shown") ?? "";
        double[] ends = [.. shown.Split(' ').Select(double.Parse)];
        return (ends[0], ends[1]);
    }

    private static async Task<(double From, double To)> Changed(Visitor visitor, (double From, double To) before)
    {
        await visitor.Page.WaitForFunctionAsync(
            "before => document.querySelector('.figure').dataset.shown !== before", System.FormattableString.Invariant($"{before.From} {before.To}"));
        return await Shown(visitor);
    }
}
