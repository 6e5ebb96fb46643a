using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Threading.Tasks;
using Xunit;

namespace LoggerBox.Shop.Tests.Gate;

/// <summary>
/// What the shop page must not answer: requests of other sites' pages (by cross-site requests and by a name that was made to point here), of
/// other programs and users of this computer, and requests that want out of what there is. Ways of attack: OWASP cheat sheets on cross-site
/// request forgery, DNS rebinding, path traversal; RFC 9112 on framing.
/// </summary>
[Collection(ShopCollection.Name)]
public sealed class HostileRequestTests(OpenShop shop)
{
    private const string Save = "opened=&name=evil.toml&text=%5Btruck%5D%0Aname%3D%22x%22%0A";

    private const string Tick = "gate=chocks&by=A&note=&act=tick";
    private const string Closing = "by=&cause=x&correction=x&act=close";
    private const string NewJob = "truck=x&serial=&hours=&fuel=&complaint=&technician=&sheet=";

    /// <summary>Name, and the request: HOST, COOKIE and TOKEN stand for the right ones.</summary>
    private static readonly (string Name, string Request)[] Table =
    [
        ("no token at all", Get("/", "Host: HOST")),
        ("wrong token in the cookie", Get("/", "Host: HOST", "Cookie: NAME=" + new string('0', 64))),
        ("empty token in the cookie", Get("/", "Host: HOST", "Cookie: NAME=")),
        ("half of the token", Get("/", "Host: HOST", "Cookie: NAME=HALF")),
        ("token in capitals", Get("/", "Host: HOST", "Cookie: NAME=UPPER")),
        ("cookie of another port", Get("/", "Host: HOST", "Cookie: loggerbox-1=TOKEN")),
        ("wrong token in the address", Get("/?token=" + new string('f', 64), "Host: HOST")),
        ("two tokens in the address", Get("/?token=TOKEN&token=TOKEN", "Host: HOST")),
        ("token in the address of another page", Get("/job/J1?token=TOKEN", "Host: HOST")),
        ("token in a header", Get("/", "Host: HOST", "Authorization: Bearer TOKEN")),
        ("script without a token", Get("/assets/trace.js", "Host: HOST")),
        ("another site's name, as DNS rebinding has it", Get("/", "Host: evil.example:PORT", "COOKIE")),
        ("another site's name without port", Get("/", "Host: evil.example", "COOKIE")),
        ("a name that begins like ours", Get("/", "Host: 127.0.0.1.evil.example:PORT", "COOKIE")),
        ("our name with another port", Get("/", "Host: 127.0.0.1:1", "COOKIE")),
        ("our name without port", Get("/", "Host: 127.0.0.1", "COOKIE")),
        ("our address written otherwise", Get("/", "Host: 2130706433:PORT", "COOKIE")),
        ("our address as IPv6", Get("/", "Host: [::1]:PORT", "COOKIE")),
        ("any address", Get("/", "Host: 0.0.0.0:PORT", "COOKIE")),
        ("no name", Get("/", "COOKIE")),
        ("two names", Get("/", "Host: HOST", "Host: evil.example", "COOKIE")),
        ("whole address of another site", Get("http://evil.example/", "Host: HOST", "COOKIE")),
        ("asked by another site", Get("/", "Host: HOST", "COOKIE", "Origin: http://evil.example")),
        ("asked by a page without origin", Get("/live/events", "Host: HOST", "COOKIE", "Origin: null")),
        ("asked by another port's page", Get("/", "Host: HOST", "COOKIE", "Origin: http://127.0.0.1:1")),
        ("asked by a page under https", Get("/", "Host: HOST", "COOKIE", "Origin: https://HOST")),
        ("fetched across sites", Get("/live/events", "Host: HOST", "COOKIE", "Sec-Fetch-Site: cross-site")),
        ("fetched from another port", Get("/trace/S1?from=0&to=9&columns=100&unit=psi", "Host: HOST", "COOKIE", "Sec-Fetch-Site: same-site")),
        ("saved by GET", Get("/sheets/save?" + Save, "Host: HOST", "COOKIE")),
        ("saved without token", Post("/sheets/save", Save, "Host: HOST", "Origin: http://HOST")),
        ("saved without origin", Post("/sheets/save", Save, "Host: HOST", "COOKIE")),
        ("saved by another site", Post("/sheets/save", Save, "Host: HOST", "COOKIE", "Origin: http://evil.example")),
        ("saved across sites", Post("/sheets/save", Save, "Host: HOST", "COOKIE", "Origin: http://HOST", "Sec-Fetch-Site: cross-site")),
        ("saved as plain text, which a page of another site may send", Post("/sheets/save", Save, "Host: HOST", "COOKIE", "Origin: http://HOST", "Content-Type: text/plain")),
        ("saved as JSON", Post("/sheets/save", "{}", "Host: HOST", "COOKIE", "Origin: http://HOST", "Content-Type: application/json")),
        ("saved in many parts", Post("/sheets/save", Save, "Host: HOST", "COOKIE", "Origin: http://HOST", "Content-Type: multipart/form-data; boundary=x")),
        ("saved under a path", Good("opened=&name=..%2Fevil.toml&text=%5Btruck%5D")),
        ("saved under a Windows path", Good("opened=&name=..%5Cevil.toml&text=%5Btruck%5D")),
        ("saved under a name with NUL", Good("opened=&name=evil.toml%00.toml&text=%5Btruck%5D")),
        ("saved under a device's name", Good("opened=&name=NUL.toml&text=%5Btruck%5D")),
        ("saved under a hidden name", Good("opened=&name=.evil.toml&text=%5Btruck%5D")),
        ("saved under no data sheet's name", Good("opened=&name=evil.html&text=%5Btruck%5D")),
        ("saved with a bad limit", Good("opened=&name=evil.toml&text=%5Bengine%5D%0Aidle_rpm%3D%7Bmin%3D9%2Cmax%3D1%7D")),
        ("saved over a sheet that it was not made from", Good("opened=&name=sample-truck.toml&text=%5Btruck%5D%0Aname%3D%22x%22")),
        ("saved with a field twice", Good(Save + "&name=other.toml")),
        ("saved with a field missing", Good("opened=&name=evil.toml")),
        ("ticked without token", Post("/gates/J5", Tick, "Host: HOST", "Origin: http://HOST")),
        ("ticked without origin", Post("/gates/J5", Tick, "Host: HOST", "COOKIE")),
        ("ticked by another site", Post("/gates/J5", Tick, "Host: HOST", "COOKIE", "Origin: http://evil.example")),
        ("ticked across sites", Post("/gates/J5", Tick, "Host: HOST", "COOKIE", "Origin: http://HOST", "Sec-Fetch-Site: cross-site")),
        ("ticked as plain text", Post("/gates/J5", Tick, "Host: HOST", "COOKIE", "Origin: http://HOST", "Content-Type: text/plain")),
        ("ticked by nobody", Ticked("gate=chocks&by=%20&note=&act=tick")),
        ("ticked by a name with NUL", Ticked("gate=chocks&by=A%00B&note=&act=tick")),
        ("ticked with a note without end", Ticked("gate=chocks&by=A&note=" + new string('n', 2001) + "&act=tick")),
        ("ticked by an act that is none", Ticked("gate=chocks&by=A&note=&act=bogus")),
        ("a truck without a serial", Get("/truck?serial=", "Host: HOST", "COOKIE")),
        ("a table of two recordings", Get("/export/J3", "Host: HOST", "COOKIE")),
        ("no gate ticked", Ticked("by=A&note=&act=tick")),
        ("a gate that is none", Ticked("gate=%3Cscript%3E&by=A&note=&act=tick")),
        ("a release ticked like a gate", Ticked("gate=release&by=A&note=&act=tick")),
        ("a gate withdrawn that is open", Ticked("gate=chocks&by=A&note=&act=withdraw")),
        ("more gates than there are", Ticked(string.Concat(Enumerable.Repeat("gate=chocks&", 500)) + "by=A&note=&act=tick")),
        ("a name twice", Ticked(Tick + "&by=B")),
        ("ticked by GET", Get("/gates/J5?gate=chocks&by=A&note=&act=tick", "Host: HOST", "COOKIE", "Sec-Fetch-Site: cross-site")),
        ("an act that is none", Ticked("gate=chocks&by=A&note=&act=bogus")),
        ("closed without token", Post("/gates/J5/close", Closing, "Host: HOST", "Origin: http://HOST")),
        ("closed without origin", Post("/gates/J5/close", Closing, "Host: HOST", "COOKIE")),
        ("closed by another site", Post("/gates/J5/close", Closing, "Host: HOST", "COOKIE", "Origin: http://evil.example")),
        ("closed across sites", Post("/gates/J5/close", Closing, "Host: HOST", "COOKIE", "Origin: http://HOST", "Sec-Fetch-Site: cross-site")),
        ("closed by GET", Get("/gates/J5/close?" + Closing, "Host: HOST", "COOKIE")),
        ("closed with an act that is none", Own("/gates/J5/close", "by=&cause=&correction=&act=bogus")),
        ("closed with a cause without end", Own("/gates/J5/close", "by=A&cause=" + new string('c', 2001) + "&correction=&act=close")),
        ("released with gates open", Own("/gates/J5/close", "by=A&cause=&correction=&act=release")),
        ("a job that is not there released", Own("/gates/J77/close", Closing)),
        ("a job written without token", Post("/jobs", NewJob, "Host: HOST", "Origin: http://HOST")),
        ("a job written without origin", Post("/jobs", NewJob, "Host: HOST", "COOKIE")),
        ("a job written by another site", Post("/jobs", NewJob, "Host: HOST", "COOKIE", "Origin: http://evil.example")),
        ("a job with a name without end", Own("/jobs", NewJob.Replace("truck=x", "truck=" + new string('t', 201), StringComparison.Ordinal))),
        ("a job with hours that are no number", Own("/jobs", NewJob.Replace("hours=", "hours=1e999", StringComparison.Ordinal))),
        ("a job with a sheet out of the folder", Own("/jobs", NewJob.Replace("sheet=", "sheet=..%2Farchive.sqlite", StringComparison.Ordinal))),
        ("a job with a field missing", Own("/jobs", "truck=x")),
        ("a session added by another site", Post("/gates/J5/session", "session=S3&role=", "Host: HOST", "COOKIE", "Origin: http://evil.example")),
        ("a session added as what it cannot be", Own("/gates/J5/session", "session=S3&role=during")),
        ("a session added that is not there", Own("/gates/J5/session", "session=S77&role=")),
        ("a gate of a job that is not there", Post("/gates/J77", Tick, "Host: HOST", "COOKIE", "Origin: http://HOST")),
        ("a gate of a statement", Post("/gates/J1'%20OR%201=1--", Tick, "Host: HOST", "COOKIE", "Origin: http://HOST")),
        ("a body that is too large", "POST /sheets/save HTTP/1.1\r\nHost: HOST\r\nCOOKIE\r\nOrigin: http://HOST\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 99999999\r\n\r\n" + "text=x"),
        ("a body without end", "POST /sheets/save HTTP/1.1\r\nHost: HOST\r\nCOOKIE\r\nOrigin: http://HOST\r\nContent-Type: application/x-www-form-urlencoded\r\nTransfer-Encoding: chunked\r\n\r\n" + string.Concat(Enumerable.Repeat($"10000\r\n{new string('a', 65536)}\r\n", 40))),
        ("two lengths", Post("/sheets/save", Save, "Host: HOST", "COOKIE", "Origin: http://HOST", "Content-Length: 3")),
        ("a reading request with a body", "GET / HTTP/1.1\r\nHost: HOST\r\nCOOKIE\r\nContent-Length: 4\r\n\r\nbody"),
        ("another method", "DELETE /job/J1 HTTP/1.1\r\nHost: HOST\r\nCOOKIE\r\n\r\n"),
        ("a method that asks for everything back", "TRACE / HTTP/1.1\r\nHost: HOST\r\nCOOKIE\r\n\r\n"),
        ("asking what is allowed from elsewhere", "OPTIONS /sheets/save HTTP/1.1\r\nHost: HOST\r\nCOOKIE\r\nOrigin: http://evil.example\r\nAccess-Control-Request-Method: POST\r\n\r\n"),
        ("out of the assets", Get("/assets/../../../../etc/passwd", "Host: HOST", "COOKIE")),
        ("out of the assets, written otherwise", Get("/assets/%2e%2e%2f%2e%2e%2fetc/passwd", "Host: HOST", "COOKIE")),
        ("out of the data sheets", Get("/sheets/edit?name=../archive.sqlite", "Host: HOST", "COOKIE")),
        ("a file as a session", Get("/session/..%2F..%2Fetc%2Fpasswd", "Host: HOST", "COOKIE")),
        ("a statement as a job", Get("/job/J1'%20OR%201=1--", "Host: HOST", "COOKIE")),
        ("a job that is not there", Get("/job/J999999999999999999999", "Host: HOST", "COOKIE")),
        ("a picture of no stretch", Get("/trace/S1?from=NaN&to=1e999&columns=99999999999&unit=psi", "Host: HOST", "COOKIE")),
        ("an address that is too long", Get("/truck?serial=" + new string('a', 9000), "Host: HOST", "COOKIE")),
        ("headers that are too long", Get("/", "Host: HOST", "COOKIE", "X-Long: " + new string('a', 40_000))),
        ("an answer within an answer", Get("/truck?serial=x%0d%0aSet-Cookie:%20a=b", "Host: HOST", "COOKIE")),
        ("no HTTP at all", "\u0016\u0003\u0001\u0002\0\u0001\0\u0001\u00fc\u0003\u0003\r\n\r\n"),
    ];

    public static TheoryData<string> Names => new(Table.Select(row => row.Name));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_hostile_request_is_refused_and_changes_nothing(string name)
    {
        string before = State();
        (int status, string answer) = HostileRequest.Send(shop.Address, Filled(Table.Single(row => row.Name == name).Request));
        Assert.True(status is >= 400 and < 500 || (status == 0 && name.Contains("too l", StringComparison.Ordinal)), $"{status}\n{answer}");
        string head = answer.Split("\r\n\r\n")[0];
        Assert.DoesNotContain("Set-Cookie", head, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("Access-Control-Allow", head, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", answer, StringComparison.Ordinal);
        Assert.Equal(before, State());
    }

    /// <summary>A table that is refused for a mistake of its own proves nothing: the same frame with nothing hostile in it is answered.</summary>
    [Fact]
    public void The_same_requests_with_nothing_hostile_in_them_are_answered()
    {
        Assert.Equal(200, HostileRequest.Send(shop.Address, Filled(Get("/", "Host: HOST", "COOKIE"))).Status);
        Assert.Equal(200, HostileRequest.Send(shop.Address, Filled(Get("/", "Host: localhost:PORT", "COOKIE"))).Status);
        Assert.Equal(200, HostileRequest.Send(shop.Address, Filled(Get("/", "Host: HOST", "COOKIE", "Sec-Fetch-Site: none"))).Status);
        Assert.Equal(303, HostileRequest.Send(shop.Address, Filled(Get("/?token=TOKEN", "Host: HOST"))).Status);
        Assert.Equal(200, HostileRequest.Send(shop.Address, Filled(Post("/sheets/check", Save, "Host: HOST", "COOKIE", "Origin: http://HOST", "Sec-Fetch-Site: same-origin"))).Status);
        Assert.Equal(200, HostileRequest.Send(shop.Address, Filled(Get("/trace/S1?from=0&to=9&columns=100&unit=psi", "Host: HOST", "COOKIE"))).Status);
        (int status, string answer) = HostileRequest.Send(shop.Address, Filled(Good(Save)));
        string saved = Path.Combine(shop.SheetFolder, "evil.toml");
        Assert.True(status == 303 && File.Exists(saved), answer);
        File.Delete(saved);
        (status, answer) = HostileRequest.Send(shop.Address, Filled(Ticked(Tick)));
        Assert.True(status == 303 && answer.Contains("Location: /gates/J5", StringComparison.Ordinal), answer);
        Assert.Equal(303, HostileRequest.Send(shop.Address, Filled(Ticked(Tick.Replace("act=tick", "act=withdraw", StringComparison.Ordinal)))).Status);
    }

    /// <summary>RFC 9110, 9.3.2: HEAD is GET without the content.</summary>
    [Theory]
    [InlineData("/")]
    [InlineData("/job/J1")]
    [InlineData("/gates/J1")]
    [InlineData("/sheets")]
    [InlineData("/assets/trace.js")]
    public void Asked_for_the_head_alone_it_answers_without_the_content(string path)
    {
        (int whole, string full) = HostileRequest.Send(shop.Address, Filled(Get(path, "Host: HOST", "COOKIE")));
        (int status, string answer) = HostileRequest.Send(shop.Address, Filled(Get(path, "Host: HOST", "COOKIE").Replace("GET ", "HEAD ", StringComparison.Ordinal)));
        Assert.Equal((200, 200), (whole, status));
        Assert.EndsWith("\r\n\r\n", answer, StringComparison.Ordinal);
        Assert.Contains("Content-Length: ", answer, StringComparison.Ordinal);
        Assert.True(full.Length > answer.Length);
    }

    [Fact]
    public void There_are_enough_of_them() => Assert.True(Table.Length >= 30);

    [Fact]
    public async Task Every_answer_forbids_what_a_page_does_not_need()
    {
        using var visitor = await shop.Visit();
        foreach (string path in (string[])["/", "/job/J1", "/assets/trace.js", "/nothing"])
        {
            using var answer = await visitor.GetAsync(path);
            Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self';", answer.Headers.GetValues("Content-Security-Policy").Single());
            Assert.DoesNotContain("unsafe", answer.Headers.GetValues("Content-Security-Policy").Single());
            Assert.Contains("frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single());
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("same-origin", answer.Headers.GetValues("Referrer-Policy").Single());
            Assert.Equal("same-origin", answer.Headers.GetValues("Cross-Origin-Resource-Policy").Single());
            Assert.Equal("no-store", answer.Headers.CacheControl!.ToString());
            Assert.False(answer.Headers.Contains("Server"));
        }
    }

    private static string Get(string path, params string[] headers) => $"GET {path} HTTP/1.1\r\n{string.Join("\r\n", headers)}\r\nConnection: close\r\n\r\n";

    private static string Good(string body) => Post("/sheets/save", body, "Host: HOST", "COOKIE", "Origin: http://HOST");

    private static string Own(string path, string body) => Post(path, body, "Host: HOST", "COOKIE", "Origin: http://HOST");

    private static string Ticked(string body) => Post("/gates/J5", body, "Host: HOST", "COOKIE", "Origin: http://HOST");

    private static string Post(string path, string body, params string[] headers)
    {
        IEnumerable<string> type = headers.Any(header => header.StartsWith("Content-Type", StringComparison.Ordinal)) ? [] : ["Content-Type: application/x-www-form-urlencoded"];
        return $"POST {path} HTTP/1.1\r\n{string.Join("\r\n", headers.Concat(type))}\r\nContent-Length: {body.Length}\r\nConnection: close\r\n\r\n{body}";
    }

    private string Filled(string request)
    {
        string token = shop.Address.Query[7..];
        string port = $"{shop.Address.Port}";
        return request.Replace("COOKIE", "Cookie: NAME=TOKEN").Replace("NAME", "loggerbox-" + port).Replace("HOST", "127.0.0.1:" + port).Replace("PORT", port)
            .Replace("HALF", token[..32]).Replace("UPPER", token.ToUpperInvariant()).Replace("TOKEN", token);
    }

    private string State() => string.Join('\n', Directory.EnumerateFiles(shop.SheetFolder).Append(shop.Archive).Order(StringComparer.Ordinal)
        .Select(file => file + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)))));
}
