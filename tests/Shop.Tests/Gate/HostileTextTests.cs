using System;
using System.Linq;
using System.Net.Http;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Gate;

/// <summary>What anybody can type into a work order does no harm on pages, in the report, in tables and in names of files.</summary>
[Collection(ShopCollection.Name)]
public sealed class HostileTextTests(OpenShop shop, Browser browser)
{
    private static readonly string[] Pages = ["/", "/trucks", "/job/J4", "/truck?serial=" + Uri.EscapeDataString(OpenShop.HostileName), "/report/J4", "/gates/J4", "/sheets/edit?name=" + Uri.EscapeDataString(OpenShop.HostileName)];

    public static TheoryData<string> Paths => new(Pages);

    [Theory]
    [MemberData(nameof(Paths))]
    public async Task Markup_stays_text_and_nothing_turns_the_order_of_letters_round(string path)
    {
        using HttpClient visitor = await shop.Visit();
        using HttpResponseMessage answer = await visitor.GetAsync(path);
        string page = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("<script>", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", page, StringComparison.OrdinalIgnoreCase);

        // Unicode's bidirectional controls: UAX #9, table 4.
        Assert.DoesNotMatch("[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\0]", page);
        Assert.Equal(!path.StartsWith("/sheets", StringComparison.Ordinal), page.Contains("&lt;script&gt;alert(1)&lt;/script&gt;", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_table_has_the_name_in_a_comment_of_one_line_and_a_file_is_named_by_its_id()
    {
        using HttpClient visitor = await shop.Visit();
        using HttpResponseMessage table = await visitor.GetAsync("/export/S1");
        string[] lines = (await table.Content.ReadAsStringAsync()).Split('\n');
        Assert.StartsWith("# session S1, <script>", lines[0]);
        Assert.StartsWith("time_s,rpm,", lines[1]);

        // Formulas begin with one of these (OWASP, CSV injection); a cell here is a number, a gear or a step.
        Assert.All(lines.Skip(2).SelectMany(line => line.Split(',')), cell => Assert.Matches(@"^(-?[0-9.]+|[NFR]|[a-z]+(-[NFR])?|)$", cell));
        Assert.Equal("attachment; filename=\"S1.csv\"", table.Content.Headers.GetValues("Content-Disposition").Single());
        using HttpResponseMessage report = await visitor.GetAsync("/report/J4");
        Assert.Equal("attachment; filename=\"J4-report.html\"", report.Content.Headers.GetValues("Content-Disposition").Single());
        using HttpResponseMessage none = await visitor.GetAsync("/report/" + Uri.EscapeDataString(OpenShop.HostileName));
        Assert.False(none.IsSuccessStatusCode);
        Assert.DoesNotMatch(new Regex("filename", RegexOptions.IgnoreCase), none.Content.Headers.ToString() + none.Headers);
    }

    [BrowserFact]
    public async Task A_browser_runs_nothing_of_it()
    {
        await using Visitor visitor = await browser.Visit(shop);
        bool asked = false;
        visitor.Page.Dialog += (_, dialog) =>
        {
            asked = true;
            _ = dialog.DismissAsync();
        };
        foreach (string path in (string[])["/", "/trucks", "/job/J4", "/gates/J4", Pages[3]])
        {
            await visitor.Go(path);
            await visitor.FindNothingWrong();
        }

        Assert.False(asked);
        Assert.Contains("<script>alert(1)</script>", await visitor.Page.Locator("h1").First.InnerTextAsync());
    }
}
