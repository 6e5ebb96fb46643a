using System;
using System.IO;
using System.Net;
using System.Net.Http;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using Xunit;

namespace LoggerBox.Shop.Tests;

/// <summary>
/// A shop page over a real archive: job J1 of a truck with a leaking clutch, J2 of the same truck repaired, J3 with both as before and after; a
/// session S3 that belongs to no job, J4, a job whose words are hostile, and J5, one without a session.
/// </summary>
public sealed class OpenShop : IAsyncLifetime
{
    /// <summary>Markup, formulas, bidirectional controls and path parts, as anybody can type them.</summary>
    public const string HostileName = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>=HYPERLINK(\"http://x\")\u202Egnp.exe\u2066../../etc/passwd";

    private ShopServer? server;

    public string Folder { get; } = Directory.CreateTempSubdirectory("loggerbox-shop-").FullName;

    public string Archive => Path.Combine(Folder, "archive.sqlite");

    public string SheetFolder => Path.Combine(Folder, "sheets");

    /// <summary>With the token.</summary>
    public Uri Address => server!.Address;

    public Uri Root => new(Address, "/");

    public async Task InitializeAsync()
    {
        Directory.CreateDirectory(SheetFolder);
        Run("demo", "--out", Folder, "--cause", "forward-clutch-leak", "--seed", "1");
        Run("demo", "--out", Folder, "--seed", "2");
        foreach (string truck in (string[])["Sample truck", HostileName])
        {
            Run("job", "new", "--archive", Archive, "--truck", truck, "--serial", truck == HostileName ? truck : "SAMPLE-0001", "--complaint", truck == HostileName ? truck : "No power", "--sheet", Path.Combine(Folder, "sample-truck.toml"));
        }

        Run("job", "add", "J3", "S1", "--as", "before", "--archive", Archive);
        Run("job", "add", "J3", "S2", "--as", "after", "--archive", Archive);
        Run("job", "add", "J4", "S1", "--archive", Archive);
        Run("job", "gate", "J4", "chocks", "--by", "<script>alert(1)</script>\u202Ex", "--note", HostileName, "--archive", Archive);
        Run("job", "new", "--archive", Archive, "--truck", "Not tested yet");
        Run("import", Recordings.Trace("pump-worn"), "--archive", Archive);
        File.Copy(Path.Combine(Folder, "sample-truck.toml"), Path.Combine(SheetFolder, "sample-truck.toml"));
        server = await ShopServer.Start(Settings());
    }

    public ShopSettings Settings(string? logger = null) => new(Archive, SheetFolder, 0, logger, null, TimeProvider.System);

    public async Task DisposeAsync()
    {
        if (server is not null)
        {
            await server.DisposeAsync();
        }

        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>A visitor with the cookie.</summary>
    public async Task<HttpClient> Visit()
    {
        var client = new HttpClient(new SocketsHttpHandler { CookieContainer = new CookieContainer() }) { BaseAddress = Root };
        (await client.GetAsync(Address)).EnsureSuccessStatusCode();
        return client;
    }

    private static void Run(params string[] words) => LoggerBoxCommand.Run(words).Expect(0);
}
