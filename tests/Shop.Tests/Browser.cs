using System;
using System.IO;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests;

/// <summary>Debian's Chromium without a screen.</summary>
public sealed class Browser : IAsyncLifetime
{
    // Milliseconds: on a machine that runs all tests at once a page may take long, and a wait that is over early proves nothing.
    private const float Patience = 120_000;

    private IPlaywright? driver;
    private IBrowser? program;

    public async Task InitializeAsync()
    {
        if (!File.Exists(BrowserFactAttribute.Program))
        {
            return;
        }

        driver = await Playwright.CreateAsync();
        program = await driver.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = BrowserFactAttribute.Program,
            Args = ["--no-sandbox", "--disable-background-networking"],
        });
    }

    public async Task DisposeAsync()
    {
        if (program is not null)
        {
            await program.CloseAsync();
        }

        driver?.Dispose();
    }

    /// <summary>A page of a visitor who has opened the shop's address, on the screen of an old shop PC.</summary>
    internal Task<Visitor> Visit(OpenShop shop, string path = "/") => Visit(shop.Address, path);

    /// <summary>A page that belongs to no shop, shown as if it had been opened from the disk.</summary>
    internal async Task<IPage> Show(string content)
    {
        Assert.True(program is not null, $"There is no browser at {BrowserFactAttribute.Program}.");
        IPage page = await (await program.NewContextAsync()).NewPageAsync();
        await page.SetContentAsync(content);
        return page;
    }

    /// <param name="address">With the token.</param>
    internal async Task<Visitor> Visit(Uri address, string path, bool scripts = true)
    {
        Assert.True(program is not null, $"There is no browser at {BrowserFactAttribute.Program}.");
        IBrowserContext context = await program.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 1024, Height = 600 }, JavaScriptEnabled = scripts });
        context.SetDefaultTimeout(Patience);
        IPage page = await context.NewPageAsync();
        var visitor = new Visitor(page, new Uri(address, "/"));
        await page.GotoAsync(address.ToString());
        await visitor.Go(path);
        return visitor;
    }
}
