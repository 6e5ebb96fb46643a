using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using LoggerBox.Architecture.Tests.Files;
using Xunit;

namespace LoggerBox.Architecture.Tests.References;

public class PinTableTests
{
    private static readonly List<(string Name, int Pin)> Pins = Regex.Matches(Repository.Text("firmware/board-esp32/Pins.cs"), @"const int (\w+) = (\d+);")
        .Select(match => (match.Groups[1].Value, int.Parse(match.Groups[2].Value)))
        .ToList();

    [Fact]
    public void The_channels_page_names_the_pins_of_the_firmware()
    {
        string page = Repository.Text("hardware-notes/channels.md");
        string table = page[page.IndexOf("## Pins", System.StringComparison.Ordinal)..];
        Assert.Equal(Pins, Regex.Matches(table, @"^\| (\d+) \| (\w+) \|", RegexOptions.Multiline).Select(match => (match.Groups[2].Value, int.Parse(match.Groups[1].Value))));
    }

    [Fact]
    public void No_pin_is_used_twice_or_belongs_to_start_up_usb_or_memory()
    {
        Assert.Equal(Pins.Count, Pins.Select(pin => pin.Pin).Distinct().Count());
        Assert.All(Pins, pin => Assert.DoesNotContain(pin.Pin, Enumerable.Range(26, 12).Concat([0, 3, 19, 20, 45, 46])));
    }
}
