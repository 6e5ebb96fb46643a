using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Link;
using Xunit;

namespace LoggerBox.Host.Tests.Link;

public class DeviceLineTests
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Every_byte_value_passes_both_ways_unchanged(bool serial)
    {
        using IDeviceLine device = Open(serial);
        using HostLine host = HostLine.Open(device.PortName);
        byte[] all = [.. Enumerable.Range(0, 256).Select(i => (byte)i)];

        host.Write(all, all.Length);
        Assert.Equal(all, Collect(all.Length, buffer => device.Read(buffer, 0, buffer.Length, 1000)));
        Assert.Equal(all.Length, device.Write(all, 0, all.Length));
        Assert.Equal(all, Collect(all.Length, buffer => host.Read(buffer, Second)));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_device_side_stays_while_the_other_comes_and_goes(bool serial)
    {
        using IDeviceLine device = Open(serial);
        byte[] buffer = new byte[16];
        for (byte visit = 1; visit <= 3; visit++)
        {
            using (HostLine host = HostLine.Open(device.PortName))
            {
                host.Write([visit], 1);
                Assert.Equal(1, device.Read(buffer, 0, buffer.Length, 1000));
                Assert.Equal(visit, buffer[0]);
                Assert.Equal(1, device.Write([(byte)(visit + 100)], 0, 1));
                Assert.Equal(1, host.Read(buffer, Second));
                Assert.Equal(visit + 100, buffer[0]);
            }

            Assert.Equal(0, device.Read(buffer, 0, buffer.Length, 20));
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Nothing_comes_in_time_is_no_error(bool serial)
    {
        using IDeviceLine device = Open(serial);
        using HostLine host = HostLine.Open(device.PortName);

        Assert.Equal(0, device.Read(new byte[1], 0, 1, 10));
        Assert.Equal(0, host.Read(new byte[1], TimeSpan.FromMilliseconds(10)));
    }

    [Fact]
    public void The_terminal_is_among_the_things_that_can_be_opened_and_is_no_file()
    {
        using PseudoTerminal terminal = PseudoTerminal.Open();
        Assert.StartsWith("/dev/", terminal.PortName, StringComparison.Ordinal);
        Assert.True(File.Exists(terminal.PortName));
    }

    [Theory]
    [InlineData(false, "took nothing for 5 s")]
    [InlineData(true, "was cut")]
    public void A_line_that_takes_no_more_is_told_from_one_whose_device_went(bool gone, string expected)
    {
        using TemporaryFolder folder = new();
        using PseudoTerminal terminal = PseudoTerminal.Open();
        using PortLink link = PortLink.Create(folder.File("logger"), terminal.PortName);
        using HostLine host = HostLine.Open(folder.File("logger"));
        if (gone)
        {
            File.Delete(folder.File("logger"));
        }

        // Nobody reads: far more than the system keeps of a terminal.
        UserErrorException error = Assert.Throws<UserErrorException>(() => host.Write(new byte[1 << 20], 1 << 20));

        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
        Assert.True(host.WasCut);
    }

    [Fact]
    public void A_link_follows_the_newest_terminal_and_goes_with_it()
    {
        using TemporaryFolder folder = new();
        string path = folder.File("logger");
        using PseudoTerminal first = PseudoTerminal.Open();
        using PseudoTerminal second = PseudoTerminal.Open();

        PortLink older = PortLink.Create(path, first.PortName);
        using (PortLink.Create(path, second.PortName))
        {
            older.Dispose();
            using HostLine host = HostLine.Open(path);
            host.Write([42], 1);
            Assert.Equal(1, second.Read(new byte[4], 0, 4, 1000));
        }

        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void A_link_never_takes_the_place_of_a_file()
    {
        using TemporaryFolder folder = new();
        string path = folder.File("logger");
        File.WriteAllText(path, "mine");

        Assert.Contains(path, Assert.Throws<UserErrorException>(() => PortLink.Create(path, "/dev/null")).Message, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(path));
    }

    [Fact]
    public void A_tcp_port_that_is_taken_is_refused()
    {
        using LoopbackListener first = LoopbackListener.Open();
        int port = PortAddress.Tcp(first.PortName).Port;
        Assert.Contains($"TCP port {port}", Assert.Throws<UserErrorException>(() => LoopbackListener.Open(port)).Message, StringComparison.Ordinal);
    }

    private static IDeviceLine Open(bool serial) => serial ? PseudoTerminal.Open() : LoopbackListener.Open();

    private static byte[] Collect(int count, Func<byte[], int> read)
    {
        byte[] buffer = new byte[count];
        MemoryStream collected = new();
        while (collected.Length < count)
        {
            int got = read(buffer);
            Assert.NotEqual(0, got);
            collected.Write(buffer, 0, got);
        }

        return collected.ToArray();
    }
}
