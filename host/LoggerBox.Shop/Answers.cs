using System;
using System.IO;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Units;
using LoggerBox.Shop.Pages;
using LoggerBox.Shop.Sheets;
using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop;

/// <summary>Opens the archive for one answer and sends what comes of it; what went wrong is told as a sentence, never as a trace of the inside.</summary>
internal sealed class Answers(string archive)
{
    private const string HtmlType = "text/html; charset=utf-8";

    public Task Page(HttpContext context, Func<ArchiveFile, string> render) => Guard(context, () => Html(context, Read(render)));

    /// <summary>A page whose head goes out before the rest is worked out. What goes wrong after that is said in the page itself.</summary>
    /// <param name="expect">Refuses, before anything is sent, what is not there.</param>
    public Task PageInParts(HttpContext context, string head, Action<ArchiveFile> expect, Func<ArchiveFile, string> body) => Guard(context, async () =>
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(archive);
        expect(file);
        if (HttpMethods.IsHead(context.Request.Method))
        {
            await Html(context, head + BodyOrTrouble(file, body));
            return;
        }

        context.Response.ContentType = HtmlType;
        await context.Response.WriteAsync(head, context.RequestAborted);
        await context.Response.Body.FlushAsync(context.RequestAborted);
        await context.Response.WriteAsync(BodyOrTrouble(file, body), context.RequestAborted);
    });

    private static string BodyOrTrouble(ArchiveFile file, Func<ArchiveFile, string> body)
    {
        try
        {
            return body(file);
        }
        catch (UserErrorException error)
        {
            return TroublePage.Body(error.Message);
        }
    }

    /// <summary>A page that needs no archive.</summary>
    public static Task Page(HttpContext context, Func<string> render) => Guard(context, () => Html(context, render()));

    public static Task Html(HttpContext context, string page) => Send(context, HtmlType, Encoding.UTF8.GetBytes(page));

    public Task Json<T>(HttpContext context, Func<ArchiveFile, T> content, JsonTypeInfo<T> type) => Guard(context, () => Json(context, Read(content), type));

    public static Task Json<T>(HttpContext context, T content, JsonTypeInfo<T> type) => Send(context, "application/json", JsonSerializer.SerializeToUtf8Bytes(content, type));

    public Task Text(HttpContext context, Func<ArchiveFile, string> content) => Guard(context, () => Send(context, "text/plain; charset=utf-8", Encoding.UTF8.GetBytes(Read(content))));

    public Task Bytes(HttpContext context, Func<ArchiveFile, byte[]> content) => Guard(context, () => Send(context, "application/octet-stream", Read(content)));

    public Task File(HttpContext context, string name, string type, Func<ArchiveFile, string> content) =>
        File(context, name, type + "; charset=utf-8", file => Encoding.UTF8.GetBytes(content(file)));

    /// <param name="name">Made of an id, never of what somebody typed.</param>
    public Task File(HttpContext context, string name, string type, Func<ArchiveFile, byte[]> content) => Guard(context, () =>
    {
        byte[] bytes = Read(content);
        context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}\"";
        return Send(context, type, bytes);
    });

    public static Task Form(HttpContext context, Func<SheetForm, Task> work) => Guard(context, async () => await work(await SheetForm.Read(context.Request)));

    /// <summary>What a form wants done, in an archive that must be there and can be written.</summary>
    public Task Change(HttpContext context, Action<ArchiveFile, IFormCollection> change, string then) => Change(context, (file, form) =>
    {
        change(file, form);
        return then;
    });

    /// <param name="change">Gives the page to go on with.</param>
    public Task Change(HttpContext context, Func<ArchiveFile, IFormCollection, string> change) => Guard(context, async () =>
    {
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        string then;
        using (ArchiveFile file = ArchiveFile.OpenExisting(archive))
        {
            then = change(file, form);
        }

        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = then;
    }, StatusCodes.Status422UnprocessableEntity);

    public static Task NotThere(HttpContext context) => Trouble(context, StatusCodes.Status404NotFound, "There is no such page.");

    /// <summary>Of pressures where no sheet is chosen; kPa where there is no archive either.</summary>
    public PressureUnit UsualUnit()
    {
        try
        {
            return Read(file => Host.Subjects.UsualUnit.Of(file.Jobs.All()));
        }
        catch (UserErrorException)
        {
            return PressureUnit.Kilopascal;
        }
    }

    private T Read<T>(Func<ArchiveFile, T> content)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(archive);
        return content(file);
    }

    /// <param name="refused">The status where the archive or a person is told no.</param>
    private static async Task Guard(HttpContext context, Func<Task> work, int refused = StatusCodes.Status404NotFound)
    {
        try
        {
            await work();
        }
        catch (UserErrorException error)
        {
            await Trouble(context, refused, error.Message);
        }
        catch (InvalidDataException)
        {
            await Trouble(context, StatusCodes.Status400BadRequest, "The form could not be read: nothing was changed; reload the page and try again.");
        }
        catch (BadHttpRequestException error)
        {
            await Trouble(context, error.StatusCode, "The request is larger than anything this page asks for, or broken: nothing was changed.");
        }
        catch (Exception error) when (error is not OperationCanceledException && !context.Response.HasStarted)
        {
            // The last line of defence: a person in a shop gets a sentence to pass on.
            await Trouble(context, StatusCodes.Status500InternalServerError, $"The shop page met a fault of its own ({error.GetType().Name}). Nothing was changed; please report it with the page's address.");
        }
    }

    private static async Task Send(HttpContext context, string type, byte[] bytes)
    {
        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
        }
    }

    private static Task Trouble(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        return Html(context, TroublePage.Render(sentence));
    }
}
