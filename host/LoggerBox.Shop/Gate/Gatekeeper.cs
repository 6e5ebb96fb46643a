using System;
using System.Threading.Tasks;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace LoggerBox.Shop.Gate;

/// <summary>
/// Looks at every request before anything else does. A page of another site can send requests to 127.0.0.1 from the shop's own browser, and a
/// name of another site can be made to point here: so the host's name, the page that asks and the token must all be right.
/// </summary>
internal sealed class Gatekeeper(Token token)
{
    /// <summary>A data sheet has 1 MB at most.</summary>
    public const long LargestBody = (1 << 20) + 4096;

    private const string FormType = "application/x-www-form-urlencoded";
    private const string OwnSite = "same-origin";

    // Set by the person who opens the address, not by a page.
    private const string NoSite = "none";

    public Task Admit(HttpContext context, RequestDelegate next)
    {
        ResponseHeaders.Write(context.Response.Headers);
        HttpRequest request = context.Request;
        string? refusal = Refusal(request, context.Connection.LocalPort);
        if (refusal is not null)
        {
            return Refuse(context, StatusCodes.Status403Forbidden, refusal);
        }

        string cookie = CookieName(context.Connection.LocalPort);
        if (IsFirstVisit(request))
        {
            return Welcome(context, cookie);
        }

        if (request.Cookies.TryGetValue(cookie, out string? held) && token.IsThis(held))
        {
            return next(context);
        }

        return Refuse(context, StatusCodes.Status401Unauthorized, "Open the address that `loggerbox serve` printed: it holds the key to this page.");
    }

    /// <summary>Cookies don't tell ports apart: two shop pages on one computer would take each other's.</summary>
    internal static string CookieName(int port) => $"loggerbox-{port}";

    private static string? Refusal(HttpRequest request, int port)
    {
        if (!IsOwnName(request.Headers.Host, port))
        {
            return "This page answers to 127.0.0.1 and localhost only.";
        }

        bool isPost = HttpMethods.IsPost(request.Method);
        if (!isPost && !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method))
        {
            return "Only GET, HEAD and POST are answered.";
        }

        if (!IsOwnOrigin(request.Headers.Origin, port, isWanted: isPost) || !IsOwnSite(request.Headers["Sec-Fetch-Site"]))
        {
            return "Requests from other pages are not answered.";
        }

        if (!isPost)
        {
            return request.ContentLength > 0 || request.Headers.TransferEncoding.Count > 0 ? "A request that reads has no body." : null;
        }

        return IsForm(request.ContentType) ? null : "A form is expected.";
    }

    private static bool IsOwnName(StringValues hosts, int port) =>
        hosts.Count == 1 && (hosts[0] == $"127.0.0.1:{port}" || hosts[0] == $"localhost:{port}");

    private static bool IsOwnOrigin(StringValues origins, int port, bool isWanted) => origins.Count == 0
        ? !isWanted
        : origins.Count == 1 && (origins[0] == $"http://127.0.0.1:{port}" || origins[0] == $"http://localhost:{port}");

    private static bool IsOwnSite(StringValues sites) => sites.Count == 0 || (sites.Count == 1 && sites[0] is OwnSite or NoSite);

    private static bool IsForm(string? type) => type is not null && type.Split(';')[0].Trim().Equals(FormType, StringComparison.OrdinalIgnoreCase);

    private static bool IsFirstVisit(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) && request.Path == "/" && request.Query.ContainsKey(Token.Parameter);

    /// <summary>The token moves from the address, which histories and screens show, into a cookie.</summary>
    private Task Welcome(HttpContext context, string cookie)
    {
        if (context.Request.Query[Token.Parameter] is not [string offered] || !token.IsThis(offered))
        {
            return Refuse(context, StatusCodes.Status401Unauthorized, "This address is of an earlier start: open the one that `loggerbox serve` printed last.");
        }

        context.Response.Cookies.Append(cookie, token.Text, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = "/";
        return Task.CompletedTask;
    }

    private static Task Refuse(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        context.Response.Headers.Connection = "close";
        return context.Response.WriteAsync(sentence + "\n");
    }
}
