using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Shop.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>Addresses of a work order's gates and of its end. All that changes something is a POST; ticks, withdrawals and releases are new rows.</summary>
internal sealed class GateRoutes(Answers answers, ShopSettings settings)
{
    private const int MostGates = 64;

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapReading("/gates/{id}", context => answers.Page(context, file => GatesPage.Render(file.Jobs.Load(Id(context)), JobsPage.Loose(file))));
        routes.MapPost("/gates/{id}", context => Change(context, Tick));
        routes.MapPost("/gates/{id}/session", context => Change(context, AddSession));
        routes.MapPost("/gates/{id}/close", context => Change(context, Close));
    }

    private Task Change(HttpContext context, Action<ArchiveFile, string, IFormCollection> change) =>
        answers.Change(context, (file, form) => change(file, Id(context), form), "/gates/" + Uri.EscapeDataString(Id(context)));

    private void Tick(ArchiveFile file, string job, IFormCollection form)
    {
        string[] codes = form[GatesPage.GateField].ToArray() is { Length: > 0 and <= MostGates } some ? Array.ConvertAll(some, code => code ?? "") : throw NothingChosen();
        string by = form.One(GatesPage.ByField);
        string note = form.One(GatesPage.NoteField).ReplaceLineEndings("\n");
        Action<string, IReadOnlyCollection<string>, string, string, DateTimeOffset> write = form.One(GatesPage.ActField) switch
        {
            GatesPage.Tick => file.Gates.Tick,
            GatesPage.Withdraw => file.Gates.Withdraw,
            _ => throw FormFields.NotComplete(),
        };
        write(job, codes, by, note, settings.Clock.GetLocalNow());
    }

    private void AddSession(ArchiveFile file, string job, IFormCollection form)
    {
        SessionRole role = form.One(SessionForm.RoleField) switch
        {
            "" => SessionRole.Any,
            SessionForm.Before => SessionRole.Before,
            SessionForm.After => SessionRole.After,
            _ => throw FormFields.NotComplete(),
        };
        file.Jobs.AddSessions(job, [form.One(SessionForm.SessionField)], settings.Clock.GetLocalNow(), role);
    }

    private void Close(ArchiveFile file, string job, IFormCollection form)
    {
        string cause = form.OneOrNone(ClosingForm.CauseField).ReplaceLineEndings("\n").Trim();
        string correction = form.OneOrNone(ClosingForm.CorrectionField).ReplaceLineEndings("\n").Trim();
        switch (form.One(ClosingForm.ActField))
        {
            case ClosingForm.Release:
                file.Jobs.Release(job, form.One(GatesPage.ByField) is { Length: > 0 } by ? by : null, settings.Clock.GetLocalNow(), cause, correction);
                break;
            case ClosingForm.Close when !file.Jobs.Load(job).Release.IsReleased:
                file.Jobs.Close(job, settings.Clock.GetLocalNow(), cause, correction);
                break;
            default:
                throw FormFields.NotComplete();
        }
    }

    private static UserErrorException NothingChosen() => new("No gate was chosen: nothing was written; go back, and choose those that you looked at.");

    private static string Id(HttpContext context) => (string)context.Request.RouteValues["id"]!;
}
