using System;
using System.Linq;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using LoggerBox.Host;
using Xunit;

namespace LoggerBox.Shop.Tests.Gate;

[Collection(ShopCollection.Name)]
public sealed class LoopbackTests(OpenShop shop)
{
    [Fact]
    public void The_page_listens_on_127_0_0_1_and_nowhere_else()
    {
        IPEndPoint[] open = [.. IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(end => end.Port == shop.Address.Port)];
        Assert.Equal([new IPEndPoint(IPAddress.Loopback, shop.Address.Port)], open);
    }

    /// <summary>What opens other doors of the same library: variables and a settings file in the folder that one happens to be in.</summary>
    [Fact]
    public void Nothing_in_the_surroundings_opens_another_door()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        int free = ((IPEndPoint)listener.LocalEndpoint).Port;
        listener.Stop();
        using var serve = ServedShop.Start(shop.Folder, ["--archive", shop.Archive], ("ASPNETCORE_URLS", $"http://0.0.0.0:{free}"), ("DOTNET_URLS", $"http://0.0.0.0:{free}"), ("Kestrel__Endpoints__Http__Url", $"http://0.0.0.0:{free}"));
        Assert.DoesNotContain(IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners(), end => end.Port == free);
        Assert.Equal(0, serve.Stop());
    }

    [Fact]
    public async Task A_port_that_is_taken_is_told()
    {
        var error = await Assert.ThrowsAsync<UserErrorException>(() => ShopServer.Start(shop.Settings() with { HttpPort = shop.Address.Port }));
        Assert.Contains($"Port {shop.Address.Port} on 127.0.0.1 cannot be used", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_command_line_is_looked_at()
    {
        LoggerBoxCommand.Run("serve", "--http", "70000").Refused(2, "--http");
        LoggerBoxCommand.Run("serve", "--http", "often").Refused(2, "--http");
        LoggerBoxCommand.Run("serve", "--archive", "").Refused(2, "--archive");
        LoggerBoxCommand.Run("serve", "--archive", "/proc/none/archive.sqlite").Refused(1, "/proc/none");
    }

    [Fact]
    public void The_first_line_is_the_address_alone_and_a_polite_kill_ends_it()
    {
        using var serve = ServedShop.Start(shop.Folder, ["--archive", shop.Archive]);
        Assert.Matches(@"^http://127\.0\.0\.1:\d+/\?token=[0-9a-f]{64}$", serve.Address);
        using var other = ServedShop.Start(shop.Folder, ["--archive", shop.Archive]);
        Assert.NotEqual(new Uri(serve.Address).Query, new Uri(other.Address).Query);
        Assert.Equal(0, serve.Stop());
        Assert.Equal(0, other.Stop());
    }
}
