using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report.Card;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Cards;

/// <summary>The card for the truck as a browser shows and prints it.</summary>
[Collection(ShopCollection.Name)]
public class CardPrintTests(Browser browser)
{
    private const string Hostile =
        "[truck]\nname = \"<script>document.title='taken'</script><img src=x onerror=document.title='taken'> WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW\"\nsource = \"</style></title>\"\n[oil]\ntemperature_c = { min = 71, max = 93 }\n";

    /// <summary>What does not fit is cut by the page's frame: so everything has to end above the last line, and nothing may be wider than its place.</summary>
    [BrowserFact]
    public async Task Every_card_prints_on_one_page_with_nothing_cut()
    {
        foreach (DataSheet sheet in Sheets())
        {
            IPage page = await browser.Show(CardPage.Render(TruckCard.Of(sheet)));
            byte[] paper = await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true, PrintBackground = true });
            Assert.Single(System.Text.RegularExpressions.Regex.Matches(System.Text.Encoding.Latin1.GetString(paper), "/Type\\s*/Page\\b"));
            double[] edges = await page.EvaluateAsync<double[]>(
                "() => [document.querySelector('footer').getBoundingClientRect().top - Math.max(...[...document.querySelectorAll('.cues li')].map(one => one.getBoundingClientRect().bottom)), Math.max(...[...document.querySelectorAll('td, th, caption, dd, .cautions li')].map(one => one.scrollWidth - one.clientWidth))]");
            Assert.True(edges[0] >= 0, $"{sheet.FileName}: the signals reach {-edges[0]} px into the last line");
            Assert.True(edges[1] <= 0, $"{sheet.FileName}: a cell is {edges[1]} px too narrow");
            await page.CloseAsync();
        }
    }

    [BrowserFact]
    public async Task A_hostile_sheet_runs_nothing()
    {
        IPage page = await browser.Show(CardPage.Render(TruckCard.Of(DataSheetReader.Parse(Hostile, "s.toml"))));
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.querySelectorAll('script, img').length"));
        Assert.StartsWith("<script>", await page.InnerTextAsync("h1"), StringComparison.Ordinal);
        Assert.NotEqual("taken", await page.TitleAsync());
        await page.CloseAsync();
    }

    private static IEnumerable<DataSheet> Sheets()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "LoggerBox.sln")))
        {
            folder = folder.Parent;
        }

        string demo = Path.Combine(folder.FullName, "host", "LoggerBox.TruckSimulator", "Demo", "sample-truck.toml");
        return Directory.GetFiles(Path.Combine(folder.FullName, "examples"), "*.toml").Append(demo).Select(path => DataSheetReader.Read(path)).Append(DataSheetReader.Parse(Hostile, "hostile.toml"));
    }
}
