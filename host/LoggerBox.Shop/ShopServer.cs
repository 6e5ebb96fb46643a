using System;
using System.IO;
using System.Linq;
using System.Net;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Shop.Gate;
using LoggerBox.Shop.Live;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;

namespace LoggerBox.Shop;

/// <summary>The shop page's server: on this computer only, for whoever holds the address that it was started with.</summary>
public sealed class ShopServer : IAsyncDisposable
{
    private readonly WebApplication application;
    private readonly LiveFeed live;

    private ShopServer(WebApplication application, LiveFeed live, int port, Token token)
    {
        this.application = application;
        this.live = live;
        Address = new Uri($"http://127.0.0.1:{port}/?{Token.Parameter}={token.Text}");
    }

    /// <summary>With the token: what a browser is opened with.</summary>
    public Uri Address { get; }

    /// <exception cref="UserErrorException">The port is taken.</exception>
    public static async Task<ShopServer> Start(ShopSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);

        // The empty builder reads no environment and no file: nothing beside the settings can open another door.
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel => Limit(kestrel, settings.HttpPort));
        builder.Services.AddRoutingCore();

        var token = Token.Random();
        var live = new LiveFeed(settings);
        WebApplication application = builder.Build();
        application.Use(new Gatekeeper(token).Admit);
        var routes = new ShopRoutes(settings, live, application.Lifetime.ApplicationStopping);
        application.Use(routes.Ahead.Answer);
        application.UseRouting();
        routes.Map(application);
        try
        {
            await application.StartAsync();
        }
        catch (IOException error)
        {
            await application.DisposeAsync();
            throw new UserErrorException($"Port {settings.HttpPort} on 127.0.0.1 cannot be used ({error.Message.TrimEnd('.')}): leave --http away to get a free one.");
        }

        routes.Ahead.Begin();
        return new ShopServer(application, live, PortOf(application), token);
    }

    public static async Task Until(CancellationToken stop)
    {
        var stopped = new TaskCompletionSource();
        await using CancellationTokenRegistration registration = stop.Register(stopped.SetResult);
        await stopped.Task;
    }

    public async ValueTask DisposeAsync()
    {
        live.Dispose();
        await application.StopAsync();
        await application.DisposeAsync();
    }

    private static void Limit(KestrelServerOptions kestrel, int port)
    {
        kestrel.AddServerHeader = false;
        kestrel.Listen(IPAddress.Loopback, port, listen => listen.Protocols = HttpProtocols.Http1);
        KestrelServerLimits limits = kestrel.Limits;
        limits.MaxConcurrentConnections = 64;
        limits.MaxRequestBodySize = Gatekeeper.LargestBody;
        limits.MaxRequestLineSize = 4096;
        limits.MaxRequestHeadersTotalSize = 16 * 1024;
        limits.MaxRequestHeaderCount = 50;
        limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        limits.KeepAliveTimeout = TimeSpan.FromSeconds(60);
    }

    private static int PortOf(WebApplication application) =>
        new Uri(application.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single()).Port;
}
