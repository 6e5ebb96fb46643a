using System;
using System.IO;
using System.Threading.Tasks;
using LoggerBox.Host;
using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop.Sheets;

/// <summary>What the editor sends.</summary>
/// <param name="Opened">Version that the text was made from; empty for a new sheet.</param>
internal sealed record SheetForm(string Name, string Text, string Opened)
{
    /// <exception cref="UserErrorException">A field is missing, or comes twice.</exception>
    public static async Task<SheetForm> Read(HttpRequest request)
    {
        try
        {
            IFormCollection form = await request.ReadFormAsync(request.HttpContext.RequestAborted);
            return new SheetForm(One(form, "name").Trim(), One(form, "text").ReplaceLineEndings("\n"), One(form, "opened"));
        }
        catch (InvalidDataException)
        {
            throw new UserErrorException("The form could not be read: reload the page and try again.");
        }
    }

    private static string One(IFormCollection form, string name) =>
        form[name] is [string value] ? value : throw new UserErrorException("The form is not complete: reload the page and try again.");
}
