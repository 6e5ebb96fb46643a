using System;
using System.Net.Http;
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

    /// <summary>Browsers before 2024 know no ::details-content: what is folded is unfolded for the printer, and folded again.</summary>
    [BrowserFact]
    public async Task A_browser_that_knows_no_style_for_folded_parts_prints_them_open_too()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        await visitor.Page.EvaluateAsync("""
            () => {
              for (const sheet of document.styleSheets) {
                for (let i = sheet.cssRules.length - 1; i >= 0; i--) {
                  if (sheet.cssRules[i].selectorText?.includes('::details-content')) { sheet.deleteRule(i); }
                }
              }
            }
            """);
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        ILocator reason = visitor.Page.Locator(".suspects details li").First;
        Assert.False(await reason.IsVisibleAsync());
        await visitor.Page.EvaluateAsync("dispatchEvent(new Event('beforeprint'))");
        Assert.True(await reason.IsVisibleAsync());
        Assert.Equal(0, await visitor.Page.Locator("details:not([open]):not(.trace)").CountAsync());
        await visitor.Page.EvaluateAsync("dispatchEvent(new Event('afterprint'))");
        Assert.False(await reason.IsVisibleAsync());
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

    /// <summary>Pictures that were drawn for a screen of 1024 points lie beside each other on paper, each whole.</summary>
    [BrowserFact]
    public async Task Before_and_after_are_printed_beside_each_other_and_not_over_each_other()
    {
        await using Visitor visitor = await browser.Visit(shop, "/compare?before=J1&after=J2");
        await visitor.Page.WaitForFunctionAsync("() => document.getElementById('overlay').dataset.shown && document.getElementById('engagements').dataset.shown === '2'");
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        string[] wrong = await visitor.Page.EvaluateAsync<string[]>(
            """
            () => {
              document.querySelector('main').style.width = '687px';
              const boxes = [...document.querySelectorAll('.strips canvas')].map(one => one.getBoundingClientRect());
              const wrong = boxes.filter(box => box.right > document.querySelector('main').getBoundingClientRect().right + 1).map(box => `cut at ${box.right}`);
              boxes.forEach((one, i) => boxes.slice(i + 1).forEach(other => {
                if (one.left < other.right - 1 && other.left < one.right - 1 && one.top < other.bottom - 1 && other.top < one.bottom - 1) { wrong.push('over each other'); }
              }));
              return boxes.length < 4 ? ['no pictures'] : wrong;
            }
            """);
        Assert.Empty(wrong);
    }

    /// <summary>A long table begins under its heading, and goes on over the sheet's end.</summary>
    [BrowserFact]
    public async Task The_table_of_a_truck_may_break_between_its_rows()
    {
        await using Visitor visitor = await browser.Visit(shop, "/truck?serial=SAMPLE-0001");
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.Equal("auto", await visitor.Page.Locator("table.history tbody").EvaluateAsync<string>("one => getComputedStyle(one).breakInside"));
        Assert.Equal("avoid", await visitor.Page.Locator("table.history tbody tr").First.EvaluateAsync<string>("one => getComputedStyle(one).breakInside"));
        await visitor.Page.SetViewportSizeAsync(A4Points, 1000);
        Assert.True(await visitor.Page.EvaluateAsync<bool>("[...document.querySelectorAll('table.history td')].every(one => one.getBoundingClientRect().right <= document.querySelector('table.history').getBoundingClientRect().right + 1)"));
    }

    [BrowserFact]
    public async Task Printed_gates_have_no_empty_fields()
    {
        await using Visitor visitor = await browser.Visit(shop, "/gates/J1");
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.Equal(0, await visitor.Page.EvaluateAsync<int>("[...document.querySelectorAll('input:not([type=checkbox]), button')].filter(one => one.checkVisibility()).length"));
        Assert.True(await visitor.Page.Locator(".gate").First.IsVisibleAsync());
    }

    /// <summary>No step of a printed report is torn apart, and each sheet of readings has the columns' names.</summary>
    [BrowserFact]
    public async Task A_printed_report_keeps_each_step_together()
    {
        using HttpClient client = await shop.Visit();
        IPage page = await browser.Show(await client.GetStringAsync("/report/J1"));
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        string[] steps = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('table.readings:not(.outside, .compared) tbody')].filter(one => one.querySelector('.step')).map(one => `${getComputedStyle(one).breakInside} ${one.rows.length > 1} ${one.rows[0].innerText}`)");
        Assert.True(steps.Length > 8);
        Assert.All(steps, step => Assert.StartsWith("avoid true ", step, StringComparison.Ordinal));
        Assert.Equal("table-header-group", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('table.readings:not(.outside) thead')).display"));
        await page.Context.CloseAsync();
    }
}
