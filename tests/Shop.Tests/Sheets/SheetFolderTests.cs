using System;
using System.IO;
using LoggerBox.Host;
using LoggerBox.Host.DataSheets;
using LoggerBox.Shop.Sheets;
using Xunit;

namespace LoggerBox.Shop.Tests.Sheets;

public sealed class SheetFolderTests : IDisposable
{
    private const string Good = "[truck]\nname = \"T\"\nsource = \"invented\"\n[engine]\nidle_rpm = { min = 640, max = 760 }\n";

    private readonly string path = Path.Combine(Path.GetTempPath(), "loggerbox-sheets-" + Guid.NewGuid().ToString("N"));

    private SheetFolder Folder => new(path);

    public void Dispose()
    {
        if (Directory.Exists(path))
        {
            Directory.Delete(path, recursive: true);
        }
    }

    [Fact]
    public void A_good_sheet_is_saved_and_read_again_as_it_was()
    {
        Folder.Save("truck.toml", Good, "");
        Assert.Equal(Good, Folder.Text("truck.toml"));
        Assert.Equal(["truck.toml"], Folder.Names());
        Folder.Save("truck.toml", Good + "# more\n", DataSheetReader.VersionOf(Good));
        Assert.EndsWith("# more\n", Folder.Text("truck.toml"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[engine]\nidle_rpm = { min = 760, max = 640 }\n", "line 2")]
    [InlineData("[engine]\nidle = 3\n", "line 2")]
    [InlineData("", "line 1")]
    public void A_sheet_that_the_check_refuses_leaves_no_trace(string text, string where)
    {
        var error = Assert.Throws<UserErrorException>(() => Folder.Save("truck.toml", text, ""));
        Assert.Contains(where, error.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(path));
    }

    [Fact]
    public void What_somebody_else_changed_is_not_overwritten()
    {
        Folder.Save("truck.toml", Good, "");
        string mine = DataSheetReader.VersionOf(Good);
        Folder.Save("truck.toml", Good + "# theirs\n", mine);
        var error = Assert.Throws<UserErrorException>(() => Folder.Save("truck.toml", Good + "# mine\n", mine));
        Assert.Contains("nothing was saved", error.Message, StringComparison.Ordinal);
        Assert.EndsWith("# theirs\n", Folder.Text("truck.toml"), StringComparison.Ordinal);
        Assert.Throws<UserErrorException>(() => Folder.Save("truck.toml", Good, ""));
    }

    [Fact]
    public void What_cannot_be_written_leaves_the_old_sheet_whole()
    {
        Folder.Save("truck.toml", Good, "");
        Directory.CreateDirectory(Path.Combine(path, "other.toml"));
        Assert.Throws<UserErrorException>(() => Folder.Save("other.toml", Good, ""));
        Assert.Equal(["truck.toml"], Folder.Names());
        Assert.Equal(2, Directory.GetFileSystemEntries(path).Length);
    }
}
