using System;
using System.Text;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Pages;

/// <summary>What comes out of the printer.</summary>
[Collection(ShopCollection.Name)]
public sealed class PrintTests(OpenShop shop, Browser browser)
{
    private const int A4Points = 718;

    [BrowserFact]
    public async Task On_paper_there_are_readings_and_reasons_and_nothing_to_press()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        await visitor.Page.SetViewportSizeAsync(A4Points, 1000);
        Assert.False(await visitor.Page.Locator("nav").IsVisibleAsync());
        Assert.False(await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Print" }).IsVisibleAsync());
        Assert.False(await visitor.Page.Locator("summary").First.IsVisibleAsync());
        Assert.True(await visitor.Page.Locator("table.readings").IsVisibleAsync());
        Assert.True(await visitor.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));

        // Folded reasons are open on paper: a line of them takes room.
        LocatorBoundingBoxResult? reason = await visitor.Page.Locator(".suspects details li").First.BoundingBoxAsync();
        Assert.True(reason is { Height: > 8 });
    }

    [BrowserFact]
    public async Task A_job_is_a_few_pages_of_A4()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        byte[] paper = await visitor.Page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true });
        string text = Encoding.Latin1.GetString(paper);
        Assert.StartsWith("%PDF-", text);
        Assert.InRange(text.Split("/Type /Page\n").Length + text.Split("/Type /Page ").Length - 2, 1, 5);
        Assert.Contains("/MediaBox [0 0 594", text, StringComparison.Ordinal);
    }

    [BrowserFact]
    public async Task A_trace_that_is_open_is_printed_with_the_page()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        await visitor.Page.Locator("details.trace summary").ClickAsync();
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('.figure').dataset.shown");
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.True(await visitor.Page.Locator(".u-over").First.IsVisibleAsync());
        Assert.False(await visitor.Page.Locator(".figure .bar").IsVisibleAsync());
        LocatorBoundingBoxResult box = (await visitor.Page.Locator(".strips canvas").First.BoundingBoxAsync())!;
        Assert.True(box.Width <= await visitor.Page.EvaluateAsync<int>("document.querySelector('main').clientWidth"));
    }
}
