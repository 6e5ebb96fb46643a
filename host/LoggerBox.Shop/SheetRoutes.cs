using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.DataSheets;
using LoggerBox.Shop.Pages;
using LoggerBox.Shop.Sheets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>Addresses of the data sheets: the only ones that change a file of the folder, and only by POST.</summary>
internal sealed class SheetRoutes(string path)
{
    private readonly SheetFolder folder = new(path);

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapReading("/sheets", context => Answers.Page(context, () => SheetsPage.Render(folder.Names())));
        routes.MapReading("/sheets/edit", context => Answers.Page(context, () => Edit(context.Request.Query)));
        routes.MapPost("/sheets/check", Check);
        routes.MapPost("/sheets/save", Save);
    }

    private string Edit(IQueryCollection query)
    {
        string name = query["name"].ToString();
        SheetForm form = name.Length == 0 ? SheetEditorPage.New : Opened(name);
        return SheetEditorPage.Render(form, query.ContainsKey("saved") ? $"{name} is saved." : "", SheetCheck.Of(form.Text, form.Name));
    }

    private SheetForm Opened(string name)
    {
        string text = folder.Text(name);
        return new SheetForm(name, text, DataSheetReader.VersionOf(text));
    }

    private static Task Check(HttpContext context) => Answers.Form(context, form => Answers.Json(context, SheetCheck.Of(form.Text, form.Name), ShopJson.Default.SheetCheck));

    private Task Save(HttpContext context) => Answers.Form(context, form =>
    {
        try
        {
            folder.Save(form.Name, form.Text, form.Opened);
        }
        catch (UserErrorException error)
        {
            context.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return Answers.Html(context, SheetEditorPage.Render(form, error.Message, SheetCheck.Of(form.Text, form.Name)));
        }

        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = $"/sheets/edit?name={System.Uri.EscapeDataString(form.Name)}&saved=1";
        return Task.CompletedTask;
    });
}
