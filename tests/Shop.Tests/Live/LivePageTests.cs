using System;
using System.Globalization;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Live;

/// <summary>The live page beside the virtual logger that records in real time, in a process of its own.</summary>
[Collection(ShopCollection.Name)]
public sealed class LivePageTests(OpenShop shop, Browser browser)
{
    [BrowserFact]
    public async Task Readings_follow_the_truck_and_a_logger_that_goes_is_told_and_found_again()
    {
        using var logger = SimulatedLogger.Start("--speed", "real", "--tcp");
        await using ShopServer server = await ShopServer.Start(shop.Settings(logger.Port));
        await using Visitor visitor = await browser.Visit(server.Address, "/live");
        await visitor.Page.WaitForFunctionAsync("() => document.body.dataset.state === 'reading' && document.getElementById('main').textContent !== '–'");
        Assert.Equal("neutral", await visitor.Page.Locator("#gear").InnerTextAsync());

        // The engine is started after some seconds: its speed and the pump's pressure come up.
        await visitor.Page.WaitForFunctionAsync("() => +document.getElementById('speed').textContent > 500 && +document.getElementById('main').textContent > 100");
        Assert.InRange(double.Parse(await visitor.Page.Locator("#speed").InnerTextAsync(), CultureInfo.InvariantCulture), 500, 3000);
        await visitor.Page.WaitForFunctionAsync("() => document.querySelectorAll('#captured li').length > 0");
        Assert.Contains("✓ Engine off, no pressure", await visitor.Page.Locator("#captured").InnerTextAsync());
        await visitor.FindNothingWrong();

        logger.Kill();
        await visitor.Page.WaitForFunctionAsync("() => document.body.dataset.state === 'trouble'");
        Assert.Contains(logger.Port, await visitor.Page.Locator("#sentence").InnerTextAsync());
        Assert.Equal("–", await visitor.Page.Locator("#speed").InnerTextAsync());
    }

    [BrowserFact]
    public async Task The_calibration_is_asked_for_while_somebody_watches()
    {
        using var logger = SimulatedLogger.Start("--speed", "real", "--tcp");
        await using ShopServer server = await ShopServer.Start(shop.Settings(logger.Port));
        await using Visitor watcher = await browser.Visit(server.Address, "/live");
        await watcher.Page.WaitForFunctionAsync("() => document.body.dataset.state === 'reading'");
        await using Visitor visitor = await browser.Visit(server.Address, "/calibration");
        Assert.Contains("4 to 20 mA for 500.0 psi, no pressure at 4.00 mA", await visitor.Page.Locator("table").InnerTextAsync());
        Assert.Contains("never: the logger's own values", await visitor.Page.Locator("table").InnerTextAsync());
        Assert.Contains("eye protection", await visitor.Page.Locator("main").InnerTextAsync());
        await visitor.FindNothingWrong();
        string before = await watcher.Page.Locator("#main").InnerTextAsync();
        await watcher.Page.WaitForFunctionAsync("before => document.getElementById('main').textContent !== before", before);
        Assert.Equal("reading", await watcher.Page.Locator("body").GetAttributeAsync("data-state"));
    }

    [BrowserFact]
    public async Task The_calibration_page_names_reference_certificate_and_what_is_overdue()
    {
        const uint Logger = 0x5E1F0001;
        using var logger = SimulatedLogger.Start("--tcp");
        using (HostLine line = HostLine.Open(logger.Port))
        using (ArchiveFile archive = ArchiveFile.OpenExisting(shop.Archive))
        {
            foreach (int channel in (int[])[Channel.Main, Channel.Clutch])
            {
                new LoggerConnection(line).SendCalibration(new SendCalibration
                {
                    Channel = (byte)channel,
                    Kind = ChannelKind.CurrentLoop,
                    ZeroCounts = 3196,
                    SpanCounts = 12800,
                    SpanPascal = 3_452_491,
                    UtcSeconds = 1_760_000_000,
                    Transducer = OpenShop.HostileName[..20],
                    Reference = "DW-1",
                });
                archive.Calibrations.Add(
                [
                    new ArchivedCalibration(Logger, channel, 3196, 12800, 3_452_491, 8600, "TX", OpenShop.HostileName, "C-77", new DateOnly(2025, 1, 10), new DateOnly(2099, 1, 10),
                        channel == Channel.Main ? new DateOnly(2026, 1, 31) : new DateOnly(2099, 1, 31), "A. Fitter", "", DateTimeOffset.FromUnixTimeSeconds(1_760_000_000)),
                ]);
            }
        }

        await using ShopServer server = await ShopServer.Start(shop.Settings(logger.Port));
        await using Visitor visitor = await browser.Visit(server.Address, "/calibration");
        ILocator rows = visitor.Page.Locator("tbody tr");
        Assert.Contains("▶ OVERDUE 2026-01-31", await rows.Nth(0).InnerTextAsync());
        Assert.Contains("C-77, 2025-01-10, good until 2099-01-10", await rows.Nth(0).InnerTextAsync());
        Assert.Contains("<script>alert(1)</script>", await rows.Nth(0).InnerTextAsync());
        Assert.DoesNotContain("OVERDUE", await rows.Nth(1).InnerTextAsync());
        Assert.True(await visitor.Page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 1024);
        await visitor.FindNothingWrong();
    }

    /// <summary>Reference, certificate and due date are in the archive: no logger is needed to read them.</summary>
    [BrowserFact]
    public async Task Without_a_logger_the_calibration_page_shows_what_the_archive_knows()
    {
        const uint Logger = 0x00C0FFEE;
        using (ArchiveFile archive = ArchiveFile.OpenExisting(shop.Archive))
        {
            DateOnly later = new(2099, 1, 31);
            archive.Calibrations.Add(
            [
                new ArchivedCalibration(Logger, Channel.Main, 3200, 12800, 3_447_379, 8600, "TX-OLD", "DW-1", "C-1", new DateOnly(2024, 1, 10), later, later, "A. Fitter", "", DateTimeOffset.FromUnixTimeSeconds(1_700_000_000)),
                new ArchivedCalibration(Logger, Channel.Main, 3280, 12800, 3_447_379, 8600, "TX-NEW", "DW-2", "C-2", new DateOnly(2025, 1, 10), later, new DateOnly(2026, 1, 31), "B. Smith", "", DateTimeOffset.FromUnixTimeSeconds(1_760_000_000)),
            ]);
        }

        await using Visitor visitor = await browser.Visit(shop, "/calibration");
        string table = await visitor.Page.Locator(".scroller", new() { HasText = "00C0FFEE" }).InnerTextAsync();
        Assert.All((string[])["TX-NEW", "DW-2", "C-2, 2025-01-10", "B. Smith", "▶ OVERDUE 2026-01-31", "4 to 20 mA for 500.0 psi, no pressure at 4.10 mA"], part => Assert.Contains(part, table));
        Assert.DoesNotContain("TX-OLD", table);
        Assert.Contains("--logger PORT", await visitor.Page.Locator("main").InnerTextAsync());
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task Without_a_logger_the_page_says_how_to_name_one()
    {
        await using Visitor visitor = await browser.Visit(shop, "/live");
        await visitor.Page.WaitForFunctionAsync("() => document.body.dataset.state === 'trouble'");
        Assert.Contains("--logger PORT", await visitor.Page.Locator("#sentence").InnerTextAsync());
    }

    /// <summary>The demo's sheet: idle 620 to 770 rpm, main at idle 45 to 80 psi.</summary>
    [BrowserFact]
    public async Task A_sheet_that_is_chosen_shows_its_limits_for_the_step()
    {
        using var logger = SimulatedLogger.Start("--speed", "real", "--tcp");
        await using ShopServer server = await ShopServer.Start(shop.Settings(logger.Port));
        await using Visitor visitor = await browser.Visit(server.Address, "/live");
        Assert.False(await visitor.Page.Locator("#main-limits").IsVisibleAsync());
        await visitor.Page.SelectOptionAsync("#sheet", "sample-truck.toml");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        await visitor.Page.WaitForURLAsync("**/live?sheet=sample-truck.toml");
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('#speed-limits .range').textContent === '620 to 770' && document.querySelector('#speed-limits .standing').textContent === 'inside' && document.querySelector('#main-limits .standing').textContent === 'inside'");
        Assert.Equal("45.0 to 80.0", await visitor.Page.Locator("#main-limits .range").InnerTextAsync());
        double[] drawn = await visitor.Page.EvaluateAsync<double[]>("() => { const at = document.querySelector('#main-limits'); return [+at.querySelector('rect').getAttribute('x'), +at.querySelector('.tick').getAttribute('x1'), +at.querySelector('rect').getAttribute('x') + +at.querySelector('rect').getAttribute('width')]; }");
        Assert.True(drawn[0] < drawn[1] && drawn[1] < drawn[2], string.Join(' ', drawn));
        Assert.True(await visitor.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));
        await visitor.FindNothingWrong();
    }

    /// <summary>The shop reads in psi: five signs above 99.9, on an old screen, the usual ones, and a telephone.</summary>
    [BrowserFact]
    public async Task Every_figure_stays_in_its_frame_at_every_usual_width()
    {
        await using Visitor visitor = await browser.Visit(shop, "/live?sheet=sample-truck.toml");
        foreach (int width in (int[])[360, 600, 800, 901, 1024, 1280, 1366, 1600, 1920])
        {
            await visitor.Page.SetViewportSizeAsync(width, 768);
            string[] outside = await visitor.Page.EvaluateAsync<string[]>(
                """
                () => [['speed', '2410'], ['main', '158.4'], ['clutch', '-12.3'], ['converter', '100.0']].filter(([id, text]) => {
                  const place = document.getElementById(id);
                  place.textContent = text;
                  const range = document.createRange();
                  range.selectNodeContents(place);
                  const [letters, frame] = [range.getBoundingClientRect(), place.parentElement.getBoundingClientRect()];
                  return letters.left < frame.left || letters.right > frame.right;
                }).map(([id]) => id)
                """);
            Assert.True(outside.Length == 0, $"{width}: {string.Join(' ', outside)}");
        }

        await visitor.Page.SetViewportSizeAsync(1024, 768);
        Assert.True(await visitor.Page.EvaluateAsync<double>("() => parseFloat(getComputedStyle(document.getElementById('main')).fontSize)") >= 80);
        Assert.True(await visitor.Page.EvaluateAsync<double>("() => document.querySelector('.doing').getBoundingClientRect().top - document.querySelector('#sheet').getBoundingClientRect().bottom") >= 8);
    }

    /// <summary>Two messages as the server sends them, with as many captured steps: one of them had another name by then.</summary>
    [BrowserFact]
    public async Task A_captured_step_that_gets_another_name_is_shown_by_it()
    {
        const string empty = """{"text":"–","band":"","standing":"","places":null}""";
        string Message(string last) =>
            $$"""data: {"state":"reading","sentence":"","speed":{{empty}},"main":{{empty}},"clutch":{{empty}},"converter":{{empty}},"gear":"neutral","doing":"","cue":"","clock":"","captured":["Idle, neutral","{{last}}"]}""" + "\n\n";
        await using Visitor visitor = await browser.Visit(shop);
        await visitor.Page.RouteAsync("**/live/events*", route => route.FulfillAsync(new() { ContentType = "text/event-stream", Body = Message("Full pedal, no load") + Message("Hold speed, neutral") }));
        await visitor.Go("/live");
        await Assertions.Expect(visitor.Page.Locator("#captured")).ToHaveTextAsync("✓ Idle, neutral✓ Hold speed, neutral");
    }

    [BrowserFact]
    public async Task A_sheet_that_is_not_there_is_told()
    {
        await using Visitor visitor = await browser.Visit(shop, "/live");
        IResponse? answer = await visitor.Page.GotoAsync(new System.Uri(new System.Uri(visitor.Page.Url), "/live?sheet=..%2Farchive.sqlite").ToString());
        Assert.Equal(404, answer!.Status);
        Assert.Contains("A data sheet's name", await visitor.Page.Locator("main").InnerTextAsync());
    }
}
