using LoggerBox.Host.Archive;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;
using LoggerBox.Shop.Pages;
using LoggerBox.Shop.Traces;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>Which address is answered by what. Whatever is asked for is read from the archive anew; nothing is changed but by POST.</summary>
internal sealed class ShopRoutes(ShopSettings settings)
{
    private readonly LoadedSessions sessions = new();
    private readonly Answers answers = new(settings.Archive);

    public void Map(IEndpointRouteBuilder routes)
    {
        Asset.Map(routes);
        routes.MapGet("/", context => answers.Page(context, JobsPage.Render));
        routes.MapGet("/job/{id}", context => answers.Page(context, file => SubjectPage.Render(Judged(file, Id(context)))));
        routes.MapGet("/session/{id}", context => answers.Page(context, file => SubjectPage.Render(Judged(file, Id(context)))));
        routes.MapGet("/report/{id}", context => answers.File(context, $"{PlainName(context)}-report.html", "text/html", file => HtmlReport.Render(Judged(file, Id(context)).Document)));
        routes.MapGet("/export/{id}", context => answers.File(context, $"{PlainName(context)}.csv", "text/csv", file => Csv(file, Id(context))));
        routes.MapGet("/trace/{id}/about", context => answers.Json(context, file => TraceAbout.Of(Judged(file, context.Request.Query["of"].ToString()), Id(context)), ShopJson.Default.TraceAbout));
        routes.MapGet("/trace/{id}", context => answers.Bytes(context, file => Window(file, Id(context), WindowRequest.Read(context.Request.Query))));
        routes.MapFallback(Answers.NotThere);
    }

    private JudgedSubject Judged(ArchiveFile file, string id) => JudgedSubject.Of(file, id, sessions, settings.Unit, settings.Clock.GetLocalNow());

    private string Csv(ArchiveFile file, string id)
    {
        JudgedSubject judged = Judged(file, id);
        SubjectRecording recording = judged.Subject.Recordings[0];
        return CsvExport.Render(recording.Session, $"{judged.Subject.Title}, {judged.Job?.Details.Truck}", judged.Judgement.Unit);
    }

    private byte[] Window(ArchiveFile file, string id, WindowRequest request)
    {
        (LoadedSession loaded, Pyramid pyramid) = sessions.Picture(file, id);
        return TraceWindow.Of(pyramid, loaded.Session.Header.StartMicroseconds, request.From, request.To, request.Columns).Bytes(loaded.Session.Header, request.Unit);
    }

    private static string Id(HttpContext context) => (string)context.Request.RouteValues["id"]!;

    /// <summary>An id of the archive as a file's name; whatever else an address says becomes no name.</summary>
    private static string PlainName(HttpContext context) => RowId.IsJob(Id(context)) || RowId.IsSession(Id(context)) ? Id(context) : "loggerbox";
}
