using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;
using LoggerBox.Shop.Traces;

namespace LoggerBox.Shop.Pages;

/// <summary>A job or a session: what it comes to, the suspects, every reading beside its limit; the traces folded below.</summary>
internal static class SubjectPage
{
    public static string Head(string id) =>
        Frame.Head(ReportWords.Capital(RowId.IsSession(id) ? $"session {id}" : $"job {id}"), "uplot/uPlot.iife.min.js", "strip.js", "window.js", "trace.js", "paper.js");

    public static string Body(JudgedSubject judged) => Frame.Body("/", page =>
    {
        Judgement judgement = judged.Judgement;
        page.Open("div", "head").Element("h1", NameOf(judged));
        page.Element("p", ReportWords.Capital(judged.Subject.Title), "what").Close("div");
        if (judged.Job is Job job)
        {
            ReleaseSection.Write(page, job);
        }

        OutcomeSection.Write(page, judgement);
        SuspectSection.Write(page, judgement);
        ReadingSection.Write(page, judgement);
        WriteTraces(page, judged);
        NoteSection.Write(page, judgement);
        WriteFacts(page, judged);
    });

    private static string NameOf(JudgedSubject judged) =>
        (string[])[judged.Job?.Details.Truck ?? "", judged.Judgement.Truck, "Truck not named"] is var names ? names.First(name => name.Length > 0) : "";

    private static void WriteTraces(Markup page, JudgedSubject judged)
    {
        page.Open("section", null, ("aria-labelledby", "traces")).Element("h2", "Traces", null, ("id", "traces"));
        foreach (SubjectRecording recording in judged.Subject.Recordings)
        {
            string id = recording.Row!.Id;
            page.Open("details", "trace", ("id", "trace-" + id), ("data-session", id), ("data-about", JsonSerializer.Serialize(TraceAbout.Of(judged, id), ShopJson.Default.TraceAbout)));
            page.Element("summary", judged.Subject.Recordings.Count == 1 ? "Speed and pressures over the whole recording" : $"Speed and pressures, {recording.Name}");
            page.Open("div", "figure").Close("div").Close("details");
        }

        page.Close("section");
    }

    private static void WriteFacts(Markup page, JudgedSubject judged)
    {
        page.Open("section", null, ("aria-labelledby", "facts")).Element("h2", "Work order and recording", null, ("id", "facts")).Open("dl", "facts");
        IEnumerable<ReportFact> facts = judged.Job is null ? [] : JobWords.Facts(judged.Job);
        foreach (ReportFact fact in facts.Where(fact => !string.IsNullOrEmpty(fact.Value)))
        {
            Frame.WriteFact(page, fact.Label, fact.Value!);
        }

        foreach (SubjectRecording recording in judged.Subject.All)
        {
            Frame.WriteFact(page, ReportWords.Capital(recording.Name), SessionWords.Of(recording.Row!));
        }

        Frame.WriteFact(page, "Data sheet", SheetOf(judged.Judgement));
        page.Close("dl").Open("p", "actions");
        page.Element("button", "Print", "button", ("type", "button"), ("data-print", ""));
        page.Element("a", "Report as PDF", "button", ("href", $"/report/{judged.Id}/pdf")).Element("a", "Report as a page", "button", ("href", $"/report/{judged.Id}"));
        if (judged.Job is { } whole && whole.SessionIdsOf(SessionRole.Before).Count > 0 && whole.SessionIdsOf(SessionRole.After).Count > 0)
        {
            page.Element("a", "Before and after", "button", ("href", $"/compare?before={JudgedSubjects.IdOf(whole, SessionRole.Before)}&after={JudgedSubjects.IdOf(whole, SessionRole.After)}"));
        }

        if (judged.Subject.All is [var only])
        {
            page.Element("a", "Trace as a table", "button", ("href", $"/export/{only.Row!.Id}"));
        }

        page.Close("p").Close("section");
    }

    private static string SheetOf(Judgement judgement) => judgement.SheetName.Length == 0
        ? "none: readings are shown, not judged"
        : judgement.SheetName + (judgement.SheetSource.Length == 0 ? "" : ", " + judgement.SheetSource);
}
