using System;
using System.Collections.Generic;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Shop.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>Addresses of a work order's gates. Ticking is a POST, and each tick a new row; a release is given at the program, by who closes the job.</summary>
internal sealed class GateRoutes(Answers answers, ShopSettings settings)
{
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/gates/{id}", context => answers.Page(context, file => GatesPage.Render(file.Jobs.Load(Id(context)))));
        routes.MapPost("/gates/{id}", Tick);
    }

    private Task Tick(HttpContext context) => answers.Change(
        context,
        (file, form) =>
        {
            string[] codes = form[GatesPage.GateField].ToArray() is { Length: > 0 and <= 64 } some ? Array.ConvertAll(some, code => code ?? "") : throw NothingChosen();
            string by = One(form, GatesPage.ByField);
            string note = One(form, GatesPage.NoteField).ReplaceLineEndings("\n");
            Action<string, IReadOnlyCollection<string>, string, string, DateTimeOffset> write =
                One(form, GatesPage.ActField) switch
                {
                    GatesPage.Tick => file.Gates.Tick,
                    GatesPage.Withdraw => file.Gates.Withdraw,
                    _ => throw NotComplete(),
                };
            write(Id(context), codes, by, note, settings.Clock.GetLocalNow());
        },
        "/gates/" + Uri.EscapeDataString(Id(context)));

    private static string One(IFormCollection form, string name) =>
        form[name] is [string value] ? value : throw NotComplete();

    private static UserErrorException NotComplete() => new("The form is not complete: nothing was written; reload the page and try again.");

    private static UserErrorException NothingChosen() => new("No gate was chosen: nothing was written; go back, and choose those that you looked at.");

    private static string Id(HttpContext context) => (string)context.Request.RouteValues["id"]!;
}
