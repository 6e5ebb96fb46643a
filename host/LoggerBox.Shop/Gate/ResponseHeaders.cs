using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop.Gate;

/// <summary>What every answer says to the browser: run our own scripts and nothing else, keep nothing, show us in no frame.</summary>
internal static class ResponseHeaders
{
    public const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static void Write(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";

        // Not "no-referrer": a browser then sends a form of our own without its origin.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-store";
    }
}
