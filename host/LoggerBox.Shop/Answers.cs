using System;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Shop.Pages;
using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop;

/// <summary>Opens the archive for one answer and sends what comes of it; what went wrong is told as a sentence, never as a trace of the inside.</summary>
internal sealed class Answers(string archive)
{
    private const string Html = "text/html; charset=utf-8";

    public Task Page(HttpContext context, Func<ArchiveFile, string> render) => Send(context, Html, file => Encoding.UTF8.GetBytes(render(file)));

    /// <summary>A page that needs no archive.</summary>
    public static Task Page(HttpContext context, Func<string> render) => Send(context, Html, () => Encoding.UTF8.GetBytes(render()));

    public Task Json<T>(HttpContext context, Func<ArchiveFile, T> content, JsonTypeInfo<T> type) =>
        Send(context, "application/json", file => JsonSerializer.SerializeToUtf8Bytes(content(file), type));

    public Task Bytes(HttpContext context, Func<ArchiveFile, byte[]> content) => Send(context, "application/octet-stream", content);

    /// <param name="name">Made of an id, never of what somebody typed.</param>
    public Task File(HttpContext context, string name, string type, Func<ArchiveFile, string> content)
    {
        context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}\"";
        return Send(context, type + "; charset=utf-8", file => Encoding.UTF8.GetBytes(content(file)));
    }

    public static Task NotThere(HttpContext context) => Trouble(context, StatusCodes.Status404NotFound, "There is no such page.");

    private Task Send(HttpContext context, string type, Func<ArchiveFile, byte[]> content) => Send(context, type, () =>
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(archive);
        return content(file);
    });

    private static async Task Send(HttpContext context, string type, Func<byte[]> content)
    {
        byte[] bytes;
        try
        {
            bytes = content();
        }
        catch (UserErrorException error)
        {
            await Trouble(context, StatusCodes.Status404NotFound, error.Message);
            return;
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            // The last line of defence: a person in a shop gets a sentence to pass on.
            await Trouble(context, StatusCodes.Status500InternalServerError, $"The shop page met a fault of its own ({error.GetType().Name}). Nothing was changed; please report it with the page's address.");
            return;
        }

        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
        }
    }

    private static Task Trouble(HttpContext context, int status, string sentence)
    {
        context.Response.Headers.Remove("Content-Disposition");
        context.Response.StatusCode = status;
        context.Response.ContentType = Html;
        return context.Response.WriteAsync(TroublePage.Render(sentence));
    }
}
