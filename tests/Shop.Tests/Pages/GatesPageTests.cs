using System.Text.RegularExpressions;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Pages;

/// <summary>A work order's gates, ticked in the browser by keyboard and by finger, with scripts and without.</summary>
[Collection(ShopCollection.Name)]
public sealed class GatesPageTests(OpenShop shop, Browser browser)
{
    [BrowserFact]
    public async Task A_job_page_says_that_the_truck_is_not_released_and_leads_to_its_gates()
    {
        await using Visitor visitor = await browser.Visit(shop, "/job/J1");
        Assert.Contains("✕ NOT RELEASED", await visitor.Page.Locator(".release").InnerTextAsync());
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Gates and release" }).ClickAsync();
        Assert.Contains("the demo", await visitor.Page.Locator(".gate", new() { HasText = "chocked" }).InnerTextAsync());
        Assert.Contains("cardboard", await visitor.Page.Locator("main").InnerTextAsync());
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task A_job_without_a_session_has_its_gates_all_the_same()
    {
        await using Visitor visitor = await browser.Visit(shop);
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "J5", Exact = true }).ClickAsync();
        Assert.Equal(12, await visitor.Page.Locator(".gate").CountAsync());
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task Gates_are_ticked_with_a_name_and_taken_back_without_any_script()
    {
        LoggerBoxCommand.Run("job", "new", "--archive", shop.Archive, "--truck", "Gate truck").Expect(0);
        string[] listed = LoggerBoxCommand.Run("job", "show", "--archive", shop.Archive).Expect(0).Out.TrimEnd('\n').Split('\n');
        string job = listed[^1].Split(' ')[0];
        await using Visitor visitor = await browser.Visit(shop.Address, "/gates/" + job, scripts: false);
        await visitor.Page.GetByLabel("Drive wheels clear").CheckAsync();
        await visitor.Page.GetByLabel("Every wheel").CheckAsync();
        await visitor.Page.GetByLabel("Who looked").FillAsync("A. Fitter <b>");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Tick what is chosen" }).ClickAsync();
        Assert.Contains("wants a note (which: on stands, or down)", await visitor.Page.Locator(".trouble").InnerTextAsync());

        await visitor.Go("/gates/" + job);
        await visitor.Page.GetByLabel("Drive wheels clear").CheckAsync();
        await visitor.Page.GetByLabel("Who looked").FillAsync("A. Fitter <b>");
        await visitor.Page.GetByLabel("Note").FillAsync("on stands");
        await visitor.Page.Keyboard.PressAsync("Enter");
        ILocator stands = visitor.Page.Locator(".gate", new() { HasText = "Drive wheels clear" });
        await Assertions.Expect(stands).ToContainTextAsync(new Regex(@"✓\s[\s\S]*A\. Fitter <b>, \d{4}-[^:]+:\d\d [^:]+:\d\d: on stands"), new() { UseInnerText = true });

        await visitor.Page.GetByLabel("Drive wheels clear").CheckAsync();
        await visitor.Page.GetByLabel("Who looked").FillAsync("B. Smith");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Withdraw what is chosen" }).ClickAsync();
        await Assertions.Expect(stands).ToContainTextAsync("open", new() { UseInnerText = true });
        Assert.Contains("NOT RELEASED", await visitor.Page.Locator(".release").InnerTextAsync());
    }
}
