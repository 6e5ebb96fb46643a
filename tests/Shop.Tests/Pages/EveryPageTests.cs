using System.IO;
using System.Linq;
using System.Net.Http;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Pages;

/// <summary>What holds for each page: no error, nothing loaded from elsewhere, no hindrance (axe-core's rules for WCAG 2 and best practice), keys enough.</summary>
[Collection(ShopCollection.Name)]
public sealed class EveryPageTests(OpenShop shop, Browser browser)
{
    private static readonly string[] Pages =
    [
        "/", "/trucks", "/truck?serial=SAMPLE-0001", "/job/J1", "/job/J3", "/session/S2", "/session/S3", "/compare?before=J1&after=J2", "/compare?before=J3.before&after=J3.after",
        "/gates/J1", "/gates/J5", "/jobs/new", "/live", "/calibration", "/sheets", "/sheets/edit", "/sheets/edit?name=sample-truck.toml",
    ];

    [BrowserFact]
    public async Task Nothing_is_wrong_on_any_page()
    {
        await using Visitor visitor = await browser.Visit(shop);
        foreach (string path in Pages)
        {
            await visitor.Go(path);
            await visitor.Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => { part.open = true; })");
            await visitor.FindNothingWrong();
        }
    }

    [BrowserFact]
    public async Task Every_page_fits_a_screen_of_1024_points_and_has_one_heading()
    {
        await using Visitor visitor = await browser.Visit(shop);
        foreach (string path in Pages)
        {
            await visitor.Go(path);
            Assert.True(await visitor.Page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 1024, path);
            Assert.Equal(1, await visitor.Page.Locator("h1").CountAsync());
        }
    }

    /// <summary>A telephone of the smaller kind. What is wider than the screen scrolls by itself, the page does not.</summary>
    [BrowserFact]
    public async Task Every_page_fits_a_screen_of_360_points()
    {
        await using Visitor visitor = await browser.Visit(shop);
        await visitor.Page.SetViewportSizeAsync(360, 740);
        foreach (string path in Pages)
        {
            await visitor.Go(path);
            string wide = await visitor.Page.EvaluateAsync<string>(
                "document.documentElement.scrollWidth <= 360 ? '' : [...document.querySelectorAll('main *, nav *')].filter(one => one.getBoundingClientRect().right > 361 && !one.closest('.scroller')).slice(0, 3).map(one => one.outerHTML.slice(0, 200)).join('\\n') || 'wide'");
            Assert.True(wide.Length == 0, $"{path}\n{wide}");
            await visitor.FindNothingWrong();
        }
    }

    [BrowserFact]
    public async Task Whatever_can_be_pressed_is_reached_by_Tab_and_shows_that_it_is()
    {
        await using Visitor visitor = await browser.Visit(shop);
        foreach (string path in (string[])["/", "/job/J1", "/truck?serial=SAMPLE-0001", "/sheets/edit?name=sample-truck.toml"])
        {
            await visitor.Go(path);
            int wanted = await visitor.Page.EvaluateAsync<int>("[...document.querySelectorAll('a[href], button, select, textarea, summary, input:not([type=hidden])')].filter(one => one.checkVisibility()).length");
            var seen = await visitor.Page.EvaluateHandleAsync("new Set()");
            for (int i = 0; i < wanted + 5; i++)
            {
                await visitor.Page.Keyboard.PressAsync("Tab");
                Assert.True(await visitor.Page.EvaluateAsync<bool>("seen => { const at = document.activeElement; if (at === document.body) { return true; } seen.add(at); return getComputedStyle(at).outlineStyle !== 'none'; }", seen));
            }

            Assert.Equal(wanted, await visitor.Page.EvaluateAsync<int>("seen => [...seen].filter(one => one.matches('a[href], button, select, textarea, summary, input')).length", seen));
        }
    }

    /// <summary>A glove's fingertip: 48 points are half an inch at 96 an inch (WCAG 2.2, 2.5.5, wants 44).</summary>
    [BrowserFact]
    public async Task Whatever_can_be_pressed_is_large_enough_for_a_glove()
    {
        await using Visitor visitor = await browser.Visit(shop);
        foreach (string path in Pages)
        {
            await visitor.Go(path);
            string[] small = await visitor.Page.EvaluateAsync<string[]>(
                "[...document.querySelectorAll('a.button, nav a, main button, select, input:not([type=hidden])')].filter(one => one.checkVisibility() && (one.offsetHeight < 44 || one.offsetWidth < 44)).map(one => one.outerHTML)");
            Assert.Empty(small);
        }
    }

    [BrowserFact]
    public async Task A_page_that_is_not_there_says_so()
    {
        await using Visitor visitor = await browser.Visit(shop);
        IResponse? answer = await visitor.Page.GotoAsync(new System.Uri(shop.Root, "/job/J77").ToString());
        Assert.Equal(404, answer!.Status);
        Assert.Contains("J77", await visitor.Page.Locator(".trouble").InnerTextAsync());
        await visitor.FindNoHindrance();

        answer = await visitor.Page.GotoAsync(new System.Uri(shop.Root, "/nothing").ToString());
        Assert.Equal(404, answer!.Status);
        await visitor.FindNoHindrance();
    }

    /// <summary>What the browser shows of a report that was saved: axe finds nothing on it, with and without a comparison, nor on a card.</summary>
    [BrowserFact]
    public async Task Reports_and_cards_hinder_nobody_either()
    {
        using HttpClient client = await shop.Visit();
        string card = Path.Combine(shop.Folder, "card.html");
        LoggerBoxCommand.Run("sheet", "card", Path.Combine(shop.Folder, "sample-truck.toml"), "--out", card).Expect(0);
        foreach (string page in (string[])[await client.GetStringAsync("/report/J1"), await client.GetStringAsync("/report/J3"), await File.ReadAllTextAsync(card)])
        {
            IPage shown = await browser.Show(page);
            Assert.Empty(await Visitor.Hindrances(shown));
            await shown.Context.CloseAsync();
        }
    }

    [BrowserFact]
    public async Task From_the_jobs_one_comes_to_a_job_and_from_the_trucks_to_a_comparison()
    {
        await using Visitor visitor = await browser.Visit(shop);
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "J2", Exact = true }).ClickAsync();
        Assert.Contains("normal", await visitor.Page.Locator("#outcome").InnerTextAsync());
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Trucks" }).ClickAsync();
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "SAMPLE-0001" }).ClickAsync();
        Assert.Contains("changed", await visitor.Page.Locator("table.history").InnerTextAsync());
        await visitor.Page.GetByLabel("After").SelectOptionAsync("J2");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Compare" }).ClickAsync();
        Assert.Contains("normal after the repair", await visitor.Page.Locator("#outcome").InnerTextAsync());
    }
}
