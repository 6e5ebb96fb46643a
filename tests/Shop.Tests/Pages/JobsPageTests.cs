using System;
using System.Net;
using System.Net.Http;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Pages;

[Collection(ShopCollection.Name)]
public sealed class JobsPageTests(OpenShop shop, Browser browser)
{
    [Fact]
    public async Task A_session_without_a_job_is_listed_and_shown_without_verdicts()
    {
        using HttpClient visitor = await shop.Visit();
        string list = await visitor.GetStringAsync("/");
        Assert.Contains("Sessions without a job", list, StringComparison.Ordinal);
        Assert.Contains("href=\"/session/S3\"", list, StringComparison.Ordinal);
        string page = await visitor.GetStringAsync("/session/S3");
        Assert.Contains("Nothing was judged", page, StringComparison.Ordinal);
        Assert.Contains("none: readings are shown, not judged", page, StringComparison.Ordinal);
        Assert.DoesNotContain("verdict inside", page, StringComparison.Ordinal);
    }

    [BrowserFact]
    public async Task The_list_says_what_each_job_comes_to()
    {
        await using Visitor visitor = await browser.Visit(shop, "/");
        await visitor.Page.WaitForFunctionAsync("() => document.documentElement.dataset.read === 'all'");
        async Task<string> Of(string job) => await visitor.Page.Locator("table.list tr", new() { Has = visitor.Page.GetByRole(AriaRole.Link, new() { Name = job, Exact = true }) }).First.Locator(".comes").InnerTextAsync();
        Assert.Equal("Suspect: forward clutch circuit leaks", await Of("J1"));
        Assert.Contains("normal", await Of("J2"), StringComparison.Ordinal);
        await visitor.FindNothingWrong();

        // What is read already is in the page itself.
        using HttpClient client = await shop.Visit();
        string list = await client.GetStringAsync("/");
        Assert.Contains("Suspect: forward clutch circuit leaks", list, StringComparison.Ordinal);
        Assert.DoesNotContain("data-outcome", list, StringComparison.Ordinal);
        Assert.Equal("Suspect: forward clutch circuit leaks", await client.GetStringAsync("/outcome/J1"));
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("/outcome/J77")).StatusCode);
    }

    [Fact]
    public async Task A_new_shop_begins_with_an_empty_list()
    {
        string folder = System.IO.Directory.CreateTempSubdirectory("loggerbox-new-").FullName;
        using (var serve = ServedShop.Start(folder, ["--archive", System.IO.Path.Combine(folder, "archive.sqlite")]))
        {
            using var visitor = new HttpClient();
            string page = await visitor.GetStringAsync(new Uri(serve.Address));
            Assert.Contains("No work order yet", page, StringComparison.Ordinal);
            Assert.Equal(0, serve.Stop());
        }

        System.IO.Directory.Delete(folder, recursive: true);
    }

    [BrowserFact]
    public async Task Without_scripts_there_is_everything_but_traces_and_live_readings()
    {
        await using Visitor visitor = await browser.Visit(shop.Address, "/job/J1", scripts: false);
        Assert.Contains("forward clutch circuit leaks", await visitor.Page.Locator("#outcome").InnerTextAsync());
        Assert.True(await visitor.Page.Locator("table.readings").IsVisibleAsync());
        await visitor.Page.Locator(".suspects summary").First.ClickAsync();
        Assert.True(await visitor.Page.Locator(".suspects details li").First.IsVisibleAsync());
    }
}
