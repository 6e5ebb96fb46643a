using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace LoggerBox.Shop.Tests;

/// <summary>One page of the browser, with everything that went wrong on it.</summary>
internal sealed class Visitor : IAsyncDisposable
{
    private static readonly Lazy<string> Axe = new(() =>
    {
        using var reader = new StreamReader(typeof(Visitor).Assembly.GetManifestResourceStream("axe.min.js")!);
        return reader.ReadToEnd();
    });

    private readonly Uri root;
    private readonly List<string> troubles = [];

    public Visitor(IPage page, Uri root)
    {
        Page = page;
        this.root = root;
        page.Console += (_, message) => Note(message.Type is "error" or "warning", $"console: {message.Text}");
        page.PageError += (_, error) => Note(true, $"script: {error}");
        page.Request += (_, request) => Note(!request.Url.StartsWith(root.ToString(), StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal), $"outside: {request.Url}");
    }

    public IPage Page { get; }

    public async Task Go(string path)
    {
        IResponse? answer = await Page.GotoAsync(new Uri(root, path).ToString());
        Assert.Equal(200, answer?.Status ?? 200);
    }

    /// <summary>Nothing was loaded from elsewhere, no error was written, and a machine finds no hindrance for anybody.</summary>
    public async Task FindNothingWrong()
    {
        Assert.Empty(troubles);
        await FindNoHindrance();
    }

    /// <summary>Of a page that is an answer to a mistake: the browser itself writes that down as an error.</summary>
    public async Task FindNoHindrance() => Assert.Empty(await Hindrances(Page));

    public static async Task<string?[]> Hindrances(IPage page)
    {
        // By the driver's own door: the page's policy lets no foreign script in, and must not be loosened for a test.
        await page.EvaluateAsync(Axe.Value);
        JsonElement? found = await page.EvaluateAsync("async () => (await axe.run(document, { resultTypes: ['violations'] })).violations.map(one => `${one.id}: ${one.help}: ${one.nodes.map(node => node.target + ' ' + node.html).join(' | ')}`)");
        return [.. found!.Value.EnumerateArray().Select(one => one.GetString())];
    }

    public ValueTask DisposeAsync() => new(Page.Context.CloseAsync());

    private void Note(bool isTrouble, string what)
    {
        if (isTrouble)
        {
            troubles.Add(what);
        }
    }
}
