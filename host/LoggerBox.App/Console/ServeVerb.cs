using System;
using System.CommandLine;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Units;
using LoggerBox.Shop;

namespace LoggerBox.App.Console;

/// <summary>The shop page, on this computer only. The first line printed is its address with the token.</summary>
internal static class ServeVerb
{
    private const int HighestPort = 65535;

    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var archive = SharedOptions.Archive();
        var http = SharedOptions.Between(new Option<int?>("--http") { Description = Messages.HttpOption, HelpName = "PORT" }, 0, HighestPort);
        var logger = SharedOptions.NotEmpty(new Option<string?>("--logger") { Description = Messages.LoggerOption, HelpName = "PORT" });
        var sheets = SharedOptions.NotEmpty(new Option<string?>("--sheets") { Description = Messages.SheetFolderOption, HelpName = "DIR" });
        var unit = SharedOptions.Unit();
        var verb = new Command("serve", Messages.ServeVerb) { archive, http, logger, sheets, unit };
        verb.SetAction(line =>
        {
            string path = line.GetValue(archive) ?? ArchiveFile.DefaultPath;
            Prepare(path);
            string folder = line.GetValue(sheets) ?? Path.Combine(ArchiveFile.FolderOf(path), "sheets");
            Serve(terminal, new ShopSettings(path, folder, line.GetValue(http) ?? 0, line.GetValue(logger), line.GetValue(unit), TimeProvider.System), stop).GetAwaiter().GetResult();
            return CommandLine.Done;
        });
        return verb;
    }

    private static async Task Serve(Terminal terminal, ShopSettings settings, CancellationToken stop)
    {
        await using ShopServer server = await ShopServer.Start(settings);
        await terminal.Out.WriteLineAsync(server.Address.ToString());
        await terminal.Error.WriteLineAsync(Messages.Serving(ArchiveFile.NameOf(settings.Archive)));
        await ShopServer.Until(stop);
    }

    /// <summary>A new shop begins with an empty archive; one that may only be read is shown as it is.</summary>
    private static void Prepare(string path)
    {
        using ArchiveFile file = File.Exists(path) ? ArchiveFile.OpenForReading(path) : ArchiveFile.Open(path);
    }
}
