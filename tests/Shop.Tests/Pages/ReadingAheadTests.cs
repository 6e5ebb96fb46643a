using System;
using System.Diagnostics;
using System.IO;
using System.Net;
using System.Net.Http;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using Microsoft.Data.Sqlite;
using Xunit;

namespace LoggerBox.Shop.Tests.Pages;

/// <summary>What is read before it is asked for, and what is sent before all is read: `serve` with an archive of its own.</summary>
public sealed class ReadingAheadTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    private readonly string folder = Directory.CreateTempSubdirectory("loggerbox-ahead-").FullName;

    public ReadingAheadTests() => LoggerBoxCommand.Run("demo", "--cause", "pump-worn", "--out", folder).Expect(0);

    private string Archive => Path.Combine(folder, "archive.sqlite");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_newest_jobs_are_read_while_somebody_looks_at_the_list()
    {
        using var serve = ServedShop.Start(folder, ["--archive", Archive]);
        using var visitor = new HttpClient();
        string list = await visitor.GetStringAsync(new Uri(serve.Address));
        for (var waited = Stopwatch.StartNew(); !list.Contains("Suspect: ", StringComparison.Ordinal) && waited.Elapsed < Patience;)
        {
            await Task.Delay(100);
            list = await visitor.GetStringAsync(new Uri(new Uri(serve.Address), "/"));
        }

        Assert.Contains("<td class=\"comes\">Suspect: ", list, StringComparison.Ordinal);
    }

    /// <summary>By then the page's head is on its way: the sentence stands in the page itself. What is seen at once keeps its status.</summary>
    [Fact]
    public async Task A_session_that_turns_out_to_be_damaged_is_told_of_on_the_page()
    {
        LoggerBoxCommand.Run("job", "new", "--truck", "Yard 4", "--archive", Archive).Expect(0);
        await using (var file = new SqliteConnection($"Data Source={Archive};Pooling=False"))
        {
            await file.OpenAsync();
            using SqliteCommand damage = file.CreateCommand();
            damage.CommandText = "DROP TRIGGER parts_are_not_changed; UPDATE parts SET bytes = zeroblob(length(bytes)) WHERE start = (SELECT max(start) FROM parts);";
            await damage.ExecuteNonQueryAsync();
        }

        using var serve = ServedShop.Start(folder, ["--archive", Archive]);
        using var visitor = new HttpClient();
        await visitor.GetStringAsync(new Uri(serve.Address));
        string page = await visitor.GetStringAsync(new Uri(new Uri(serve.Address), "/job/J1"));
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        Assert.Contains("class=\"trouble\"", page, StringComparison.Ordinal);
        Assert.Contains("S1", page, StringComparison.Ordinal);
        Assert.EndsWith("</html>", page.TrimEnd(), StringComparison.Ordinal);
        foreach (string path in (string[])["/job/J2", "/job/J77", "/session/S9", "/outcome/J2"])
        {
            Assert.Equal(HttpStatusCode.NotFound, (await visitor.GetAsync(new Uri(new Uri(serve.Address), path))).StatusCode);
        }
    }
}
