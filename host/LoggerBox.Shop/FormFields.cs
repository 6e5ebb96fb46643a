using LoggerBox.Host;
using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop;

/// <summary>What a form must have, each once.</summary>
internal static class FormFields
{
    public static string One(this IFormCollection form, string name) => form[name] is [string value] ? value : throw NotComplete();

    /// <summary>A field that the page leaves out where there is nothing to ask.</summary>
    public static string OneOrNone(this IFormCollection form, string name) => form.ContainsKey(name) ? form.One(name) : "";

    public static UserErrorException NotComplete() => new("The form is not complete: nothing was written; reload the page and try again.");
}
