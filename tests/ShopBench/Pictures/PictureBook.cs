using System;
using System.IO;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using LoggerBox.Shop;
using LoggerBox.Shop.Tests;
using Microsoft.Playwright;

namespace LoggerBox.ShopBench.Pictures;

/// <summary>The pictures of the README, from invented trucks, on the screen of an old shop PC.</summary>
internal static class PictureBook
{
    public static async Task Take(string folder)
    {
        Directory.CreateDirectory(folder);
        var shop = new OpenShop();
        await shop.InitializeAsync();
        var browser = new Browser();
        await browser.InitializeAsync();
        using var logger = SimulatedLogger.Start("--speed", "real", "--tcp", "--cause", "forward-clutch-leak");
        await using ShopServer server = await ShopServer.Start(shop.Settings(logger.Port));
        await Take(browser, server, "/job/J1", Path.Combine(folder, "job.png"), "() => true");
        await Take(browser, server, "/job/J1#trace-S1", Path.Combine(folder, "trace.png"), "() => { const shown = document.querySelector('.figure')?.dataset.shown; document.querySelector('details.trace').scrollIntoView(); return shown; }");
        await Take(browser, server, "/compare?before=J3.before&after=J3.after", Path.Combine(folder, "compare.png"), "() => { document.getElementById('traces').scrollIntoView(); return document.getElementById('overlay').dataset.shown; }");
        string sheet = Path.Combine(shop.SheetFolder, "sample-truck.toml");
        PrintedPage.Take(Path.Combine(folder, "report.png"), "report", "J1", "--archive", shop.Archive);
        PrintedPage.Take(Path.Combine(folder, "card.png"), "sheet", "card", sheet);
        await Take(browser, server, "/live?sheet=sample-truck.toml", Path.Combine(folder, "live.png"), "() => +document.getElementById('speed').textContent > 500 && document.querySelectorAll('#captured li').length > 1 && document.querySelector('#main-limits .standing').textContent === 'inside'");
        await Take(browser, server, "/sheets/edit?name=sample-truck.toml", Path.Combine(folder, "sheet.png"), "() => true");
        using (var other = SimulatedLogger.Start("--speed", "real", "--cause", "forward-clutch-leak"))
        {
            await TerminalPage.Take(browser, Path.Combine(folder, "watch.png"), other.Port, sheet, "Idle, forward");
        }

        await browser.DisposeAsync();
        await shop.DisposeAsync();
    }

    private static async Task Take(Browser browser, ShopServer server, string path, string file, string ready)
    {
        await using Visitor visitor = await browser.Visit(server.Address, path);
        await visitor.Page.WaitForFunctionAsync(ready, null, new PageWaitForFunctionOptions { Timeout = 120_000 });
        await visitor.Page.ScreenshotAsync(new PageScreenshotOptions { Path = file });
        Console.WriteLine(file);
    }
}
