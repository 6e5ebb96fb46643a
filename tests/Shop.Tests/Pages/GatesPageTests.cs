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
        Assert.Contains("the demo", await visitor.Page.Locator(".gate", new() { HasText = "Every wheel that stays" }).InnerTextAsync());
        Assert.Contains("cardboard", await visitor.Page.Locator("main").InnerTextAsync());
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task A_job_without_a_session_has_its_gates_all_the_same()
    {
        await using Visitor visitor = await browser.Visit(shop);
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "J5", Exact = true }).ClickAsync();
        Assert.Equal(13, await visitor.Page.Locator(".gate").CountAsync());
        await visitor.FindNothingWrong();
    }

    [BrowserFact]
    public async Task Gates_are_ticked_with_a_name_and_taken_back_without_any_script()
    {
        LoggerBoxCommand.Run("job", "new", "--archive", shop.Archive, "--truck", "Gate truck").Expect(0);
        string[] listed = LoggerBoxCommand.Run("job", "show", "--archive", shop.Archive).Expect(0).Out.TrimEnd('\n').Split('\n');
        string job = listed[^1].Split(' ')[0];
        await using Visitor visitor = await browser.Visit(shop.Address, "/gates/" + job, scripts: false);
        await visitor.Page.GetByLabel("oil level and temperature").CheckAsync();
        await visitor.Page.GetByLabel("Every wheel").CheckAsync();
        await visitor.Page.GetByLabel("Who looked").FillAsync("A. Fitter <b>");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Tick what is chosen" }).ClickAsync();
        Assert.Contains("wants a note (level, temperature, and how they were read)", await visitor.Page.Locator(".trouble").InnerTextAsync());

        await visitor.Go("/gates/" + job);
        await visitor.Page.GetByLabel("oil level and temperature").CheckAsync();
        await visitor.Page.GetByLabel("Who looked").FillAsync("A. Fitter <b>");
        await visitor.Page.GetByLabel("Note").FillAsync("full, 80 C, infrared");
        await visitor.Page.Keyboard.PressAsync("Enter");
        ILocator oil = visitor.Page.Locator(".gate", new() { HasText = "oil level and temperature" });
        await Assertions.Expect(oil).ToContainTextAsync(new Regex(@"✓\s[\s\S]*A\. Fitter <b>, \d{4}-[^:]+:\d\d [^:]+:\d\d: full, 80 C, infrared"), new() { UseInnerText = true });

        await Assertions.Expect(oil).ToHaveClassAsync("gate done");
        await Assertions.Expect(oil.Locator("input")).ToHaveCountAsync(0);

        await visitor.Page.GetByText("Take a tick back").ClickAsync();
        await visitor.Page.Locator(".withdraw").GetByLabel("oil level and temperature").CheckAsync();
        await visitor.Page.Locator(".withdraw").GetByLabel("Who looked").FillAsync("B. Smith");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Withdraw what is chosen" }).ClickAsync();
        await Assertions.Expect(oil).ToContainTextAsync("open", new() { UseInnerText = true });
        Assert.Contains("NOT RELEASED", await visitor.Page.Locator(".release").InnerTextAsync());
    }

    /// <summary>A sign that is not filled is not seen from two metres: nearly black on white, as large as the box of one that is open.</summary>
    [BrowserFact]
    public async Task A_ticked_gate_is_a_filled_sign_and_has_no_box_to_press()
    {
        await using Visitor visitor = await browser.Visit(shop, "/gates/J1");
        ILocator done = visitor.Page.Locator(".gate.done").First;
        Assert.Equal(0, await done.Locator("input").CountAsync());
        double[] sign = await done.Locator(".sign").EvaluateAsync<double[]>("one => [one.offsetWidth, one.offsetHeight, ...getComputedStyle(one).backgroundColor.match(/\\d+/g).map(Number)]");
        Assert.True(sign[0] >= 44 && sign[1] >= 44, string.Join(' ', sign));
        Assert.All(sign[2..5], part => Assert.InRange(part, 0, 64));
        Assert.Equal("✓", await done.Locator(".sign").InnerTextAsync());
    }

    [BrowserFact]
    public async Task A_job_is_written_ticked_and_released_at_the_page_without_any_script()
    {
        await using Visitor visitor = await browser.Visit(shop.Address, "/jobs/new", scripts: false);
        await visitor.Page.GetByLabel("Truck", new() { Exact = true }).FillAsync("Page <b>truck");
        await visitor.Page.GetByLabel("Serial").FillAsync("PAGE-1");
        await visitor.Page.GetByLabel("Hour meter").FillAsync("4211.5");
        await visitor.Page.GetByLabel("Complaint").FillAsync("Weak on the ramp");
        await visitor.Page.GetByLabel("Data sheet", new() { Exact = true }).SelectOptionAsync("sample-truck.toml");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Write the job" }).ClickAsync();
        string address = visitor.Page.Url;
        Assert.Contains("/gates/J", address);
        Assert.Contains("Page <b>truck", await visitor.Page.Locator(".head").InnerTextAsync());

        await visitor.Page.GetByLabel("Who releases").FillAsync("A. Fitter");
        await visitor.Page.GetByLabel("Cause found").FillAsync("seal ring");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Release the truck" }).ClickAsync();
        Assert.Contains("cannot be released, 5 closing gates are open", await visitor.Page.Locator(".trouble").InnerTextAsync());

        await visitor.Page.GotoAsync(address);
        foreach (ILocator box in await visitor.Page.Locator("form.gates:not(.closing) > fieldset .gate.open input").AllAsync())
        {
            await box.CheckAsync();
        }

        await visitor.Page.GetByLabel("Who looked").FillAsync("A. Fitter");
        await visitor.Page.GetByLabel("Note").FillAsync("down; full, 80 °C, infrared");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Tick what is chosen" }).ClickAsync();
        await Assertions.Expect(visitor.Page.Locator(".gate.done").First).ToBeVisibleAsync();

        await visitor.Page.GetByLabel("Cause found").FillAsync("seal ring");
        await visitor.Page.GetByLabel("Correction").FillAsync("new ring");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Release the truck" }).ClickAsync();
        Assert.Contains("nobody who releases", await visitor.Page.Locator(".trouble").InnerTextAsync());

        await visitor.Page.GotoAsync(address);
        await visitor.Page.GetByLabel("Cause found").FillAsync("seal ring");
        await visitor.Page.GetByLabel("Correction").FillAsync("new ring");
        await visitor.Page.GetByLabel("Who releases").FillAsync("A. Fitter");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Release the truck" }).ClickAsync();
        await Assertions.Expect(visitor.Page.Locator(".release")).ToContainTextAsync("Released by A. Fitter");
        Assert.Equal(0, await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Release the truck" }).CountAsync());
        string shown = LoggerBoxCommand.Run("job", "show", address.Split('/')[^1], "--archive", shop.Archive).Expect(0).Out;
        Assert.All((string[])["seal ring", "new ring", "PAGE-1", "4211.5 h", "Weak on the ramp", "sample-truck.toml"], part => Assert.Contains(part, shown));
    }
}
