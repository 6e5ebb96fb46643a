using System;
using System.Text.Json;
using System.Threading;
using System.Threading.Channels;
using System.Threading.Tasks;
using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop.Live;

/// <summary>The readings as server-sent events, for as long as the page is open.</summary>
internal static class LiveStream
{
    // A browser that has gone is noticed when something is sent to it.
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(5);

    public static async Task Send(HttpContext context, LiveFeed feed, LiveLook look, CancellationToken stopping)
    {
        if (feed.Join(look) is not ChannelReader<LiveShown> readings)
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            return;
        }

        using var over = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, stopping);
        try
        {
            context.Response.ContentType = "text/event-stream";
            await context.Response.Body.FlushAsync(over.Token);
            while (true)
            {
                await Next(context.Response, readings, over.Token);
            }
        }
        catch (OperationCanceledException)
        {
            // The page was closed, or the program ends.
        }
        finally
        {
            feed.Leave(readings);
        }
    }

    private static async Task Next(HttpResponse response, ChannelReader<LiveShown> readings, CancellationToken over)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(over);
        patience.CancelAfter(Silence);
        string sent;
        try
        {
            sent = "data: " + JsonSerializer.Serialize(await readings.ReadAsync(patience.Token), ShopJson.Default.LiveShown) + "\n\n";
        }
        catch (OperationCanceledException) when (!over.IsCancellationRequested)
        {
            sent = ":\n\n";
        }

        await response.WriteAsync(sent, over);
        await response.Body.FlushAsync(over);
    }
}
