using System.IO;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests.Sheets;

[Collection(ShopCollection.Name)]
public sealed class SheetEditorTests(OpenShop shop, Browser browser)
{
    [BrowserFact]
    public async Task A_bad_limit_is_refused_with_its_line_and_the_file_stays_as_it_was()
    {
        string file = Path.Combine(shop.SheetFolder, "sample-truck.toml");
        string before = await File.ReadAllTextAsync(file);
        await using Visitor visitor = await browser.Visit(shop, "/sheets/edit?name=sample-truck.toml");
        string text = await visitor.Page.GetByLabel("What the manual says").InputValueAsync();
        Assert.Equal(before, text);
        string bad = text.Replace("idle_rpm        = { min = 620, max = 770 }", "idle_rpm        = { min = 770, max = 620 }");
        Assert.NotEqual(text, bad);
        await visitor.Page.GetByLabel("What the manual says").FillAsync(bad);

        // While one types already, and again when one saves all the same.
        ILocator line = visitor.Page.Locator("#findings button");
        await line.WaitForAsync();
        Assert.Equal("Line 9", await line.InnerTextAsync());
        await line.ClickAsync();
        Assert.Contains("idle_rpm", await visitor.Page.EvaluateAsync<string>("(() => { const text = document.getElementById('text'); return text.value.slice(text.selectionStart, text.selectionEnd); })()"));
        await visitor.FindNothingWrong();
        IResponse answer = await visitor.Page.RunAndWaitForResponseAsync(() => visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync(), "**/sheets/save");
        Assert.Equal(422, answer.Status);
        Assert.Contains("Not saved: 1 error, in line 9", await visitor.Page.Locator("#said").InnerTextAsync());
        Assert.Equal(bad, await visitor.Page.GetByLabel("What the manual says").InputValueAsync());
        Assert.Equal(before, await File.ReadAllTextAsync(file));
    }

    [BrowserFact]
    public async Task A_new_sheet_is_typed_checked_and_saved_by_keyboard()
    {
        await using Visitor visitor = await browser.Visit(shop, "/sheets/edit");
        await visitor.Page.GetByLabel("File name").FocusAsync();
        await visitor.Page.Keyboard.TypeAsync("typed.toml");
        await visitor.Page.Keyboard.PressAsync("Tab");
        await visitor.Page.Keyboard.PressAsync("Control+A");
        await visitor.Page.Keyboard.InsertTextAsync("[truck]\nname = \"Typed\"\nsource = \"invented\"\n[engine]\nidle_rpm = { min = 640, max = 760 }\n");
        await visitor.Page.WaitForFunctionAsync("() => document.getElementById('said').textContent === 'Nothing wrong: it can be saved.'");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).FocusAsync();
        await visitor.Page.Keyboard.PressAsync("Enter");

        // By what the new page says: a navigation that is over before one waits for it would be waited for in vain.
        await visitor.Page.GetByText("typed.toml is saved.", new() { Exact = true }).WaitForAsync();
        Assert.EndsWith("/sheets/edit?name=typed.toml&saved=1", visitor.Page.Url);
        string file = Path.Combine(shop.SheetFolder, "typed.toml");
        Assert.EndsWith("max = 760 }\n", await File.ReadAllTextAsync(file));
        await visitor.FindNothingWrong();
        File.Delete(file);
    }
}
