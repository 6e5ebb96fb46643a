using System.Text.RegularExpressions;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Pages;

[Collection(ShopCollection.Name)]
public sealed class ComparePageTests(OpenShop shop, Browser browser)
{
    [BrowserFact]
    public async Task Both_traces_lie_over_each_other_step_by_step()
    {
        await using Visitor visitor = await browser.Visit(shop, "/compare?before=J3.before&after=J3.after");
        Assert.Contains("normal after the repair", await visitor.Page.Locator("#outcome").InnerTextAsync());
        Assert.Contains("forward clutch circuit leaks", await visitor.Page.Locator(".outcome").InnerTextAsync());

        // The first picture is of a step that was outside its limits before.
        await visitor.Page.WaitForFunctionAsync("() => document.getElementById('overlay').dataset.shown === 'idle-F'");
        Assert.Equal(4, await visitor.Page.Locator("#overlay .u-over").CountAsync());
        await visitor.Page.Locator("table.readings button[data-step='hold-F']").ClickAsync();
        await visitor.Page.WaitForFunctionAsync("() => document.getElementById('overlay').dataset.shown === 'hold-F'");
        Assert.Equal("true", await visitor.Page.Locator("[data-way='hold-F']").GetAttributeAsync("aria-pressed"));
        await visitor.FindNothingWrong();
    }

    /// <summary>The times beside the pictures are those that were judged.</summary>
    [BrowserFact]
    public async Task Both_fillings_of_each_clutch_lie_over_each_other()
    {
        await using Visitor visitor = await browser.Visit(shop, "/compare?before=J3.before&after=J3.after");
        await visitor.Page.WaitForFunctionAsync("() => document.getElementById('engagements').dataset.shown === '2'");
        Assert.Equal(2, await visitor.Page.Locator("#engagements .u-over").CountAsync());
        string said = await visitor.Page.Locator("#engagements").InnerTextAsync();
        Assert.Contains("Engaging reverse", said);
        Match forward = Regex.Match(said, @"Engaging forward: before ([\d.]+) s, after ([\d.]+) s");
        string judged = await visitor.Page.Locator("table.readings tbody", new() { HasText = "Engaging forward" }).InnerTextAsync();
        Assert.Contains(forward.Groups[1].Value, judged);
        Assert.Contains(forward.Groups[2].Value + " s", judged);
        await visitor.Page.WaitForFunctionAsync("() => document.getElementById('overlay').dataset.shown");
        await visitor.FindNothingWrong();
        await visitor.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.True(await visitor.Page.Locator("#engagements canvas").First.IsVisibleAsync());
    }

    [BrowserFact]
    public async Task Two_trucks_are_not_compared()
    {
        await using Visitor visitor = await browser.Visit(shop);
        IResponse? answer = await visitor.Page.GotoAsync(new System.Uri(shop.Root, "/compare?before=J1&after=J4").ToString());
        Assert.Equal(404, answer!.Status);
        Assert.Contains("a comparison needs one truck", await visitor.Page.Locator(".trouble").InnerTextAsync());
    }
}
