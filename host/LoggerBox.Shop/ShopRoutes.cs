using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Report.Pdf;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Shop.Comparing;
using LoggerBox.Shop.Live;
using LoggerBox.Shop.Pages;
using LoggerBox.Shop.Traces;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>Which address is answered by what. Whatever is asked for is read from the archive anew; nothing is changed but by POST.</summary>
internal sealed class ShopRoutes
{
    private readonly ShopSettings settings;
    private readonly LiveFeed live;
    private readonly CancellationToken stopping;
    private readonly Answers answers;
    private readonly LoadedSessions sessions = new();
    private readonly JudgedSubjects subjects;

    public ShopRoutes(ShopSettings settings, LiveFeed live, CancellationToken stopping)
    {
        this.settings = settings;
        this.live = live;
        this.stopping = stopping;
        answers = new Answers(settings.Archive);
        subjects = new JudgedSubjects(sessions);
        Ahead = new ReadAhead(settings.Archive, (file, job) => SubjectPage.Body(Judged(file, job)));
    }

    public ReadAhead Ahead { get; }

    public void Map(IEndpointRouteBuilder routes)
    {
        Asset.Map(routes);
        routes.MapReading("/", context =>
        {
            Ahead.Begin();
            return answers.Page(context, file => JobsPage.Render(file, job => subjects.Outcome(file, job, settings.Unit)));
        });
        routes.MapReading("/job/{id}", Subject);
        routes.MapReading("/outcome/{id}", context => answers.Text(context, file => Outcome.Headline(Judged(file, Id(context)).Judgement)));
        new GateRoutes(answers, settings).Map(routes);
        new JobRoutes(answers, settings).Map(routes);
        routes.MapReading("/session/{id}", Subject);
        routes.MapReading("/report/{id}", context => answers.File(context, $"{PlainName(context)}-report.html", "text/html", file => HtmlReport.Render(Document(Judged(file, Id(context))))));
        routes.MapReading("/report/{id}/pdf", context => answers.File(context, $"{PlainName(context)}-report.pdf", "application/pdf", file => PdfReport.Render(Document(Judged(file, Id(context))))));
        routes.MapReading("/export/{id}", context => answers.File(context, $"{PlainName(context)}.csv", "text/csv", file => Csv(file, Id(context))));
        routes.MapReading("/trace/{id}", context => answers.Bytes(context, file => Window(file, Id(context), WindowRequest.Read(context.Request.Query))));
        routes.MapReading("/trucks", context => answers.Page(context, TrucksPage.Render));
        routes.MapReading("/truck", context => answers.Page(context, file => TruckPage.Render(file, context.Request.Query["serial"].ToString(), settings.Unit)));
        routes.MapReading("/compare", context => answers.Page(context, file => ComparePage.Render(Compared(file, context.Request.Query))));
        new LiveRoutes(answers, settings, live, stopping).Map(routes);
        routes.MapReading("/calibration", context => answers.Page(context, Calibration));
        new SheetRoutes(settings.SheetFolder).Map(routes);
        routes.MapFallback(Answers.NotThere);
    }

    // To read and judge a long recording takes a while, in which the browser fetches what the page is drawn with.
    private Task Subject(HttpContext context)
    {
        string id = Id(context);
        return answers.PageInParts(context, SubjectPage.Head(id), file => JudgedSubjects.Expect(file, id), file => SubjectPage.Body(Judged(file, id)));
    }

    private JudgedSubject Judged(ArchiveFile file, string id) => subjects.Find(file, id, settings.Unit);

    private ComparedSubjects Compared(ArchiveFile file, IQueryCollection query) =>
        ComparedSubjects.Of(file, query["before"].ToString(), query["after"].ToString(), subjects, settings.Unit);

    private string Calibration(ArchiveFile file)
    {
        if (settings.LoggerPort is null)
        {
            return CalibrationPage.Render(file.Calibrations.Latest(), UnitWithoutSheet(file), Today());
        }

        (uint id, CalibrationAnswer[] held) = live.Ask(logger => (logger.Hello().LoggerId, Calibrations(logger)));
        IReadOnlyList<ArchivedCalibration> known = file.Calibrations.Of(id);
        return CalibrationPage.Render([.. held.Select(one => (one, CalibrationWords.Newest(known, id, one)))], UnitWithoutSheet(file), Today());
    }

    private DateOnly Today() => DateOnly.FromDateTime(settings.Clock.GetLocalNow().Date);

    private PressureUnit UnitWithoutSheet(ArchiveFile file) => settings.Unit ?? UsualUnit.Of(file.Jobs.All());

    private static CalibrationAnswer[] Calibrations(LoggerConnection logger) => [.. Enumerable.Range(Channel.Main, 3).Select(logger.GetCalibration)];

    private ReportDocument Document(JudgedSubject judged) => judged.Subject.Report(judged.Judgement, ArchivedSubjects.SheetOrBlank(judged.Job), settings.Clock.GetLocalNow());

    private string Csv(ArchiveFile file, string id)
    {
        JudgedSubject judged = Judged(file, id);
        if (judged.Subject.All is not [SubjectRecording recording])
        {
            throw new UserErrorException($"A table is of one recording, and job {judged.Job?.Id} holds {judged.Subject.All.Count} sessions: open one of them by itself, {string.Join(", ", judged.Subject.All.Select(one => "/export/" + one.Row!.Id))}.");
        }

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
