using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Shop.Live;
using LoggerBox.Shop.Pages;
using LoggerBox.Shop.Sheets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>The live page and its readings. The sheet whose limits are shown is part of the address: nothing is kept.</summary>
internal sealed class LiveRoutes(Answers answers, ShopSettings settings, LiveFeed live, CancellationToken stopping)
{
    private readonly SheetFolder folder = new(settings.SheetFolder);

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapReading("/live", context => Answers.Page(context, () => LivePage.Render(live.Port, Look(context), folder.Names())));
        routes.MapGet("/live/events", Events);
    }

    private Task Events(HttpContext context)
    {
        try
        {
            return LiveStream.Send(context, live, Look(context), stopping);
        }
        catch (UserErrorException)
        {
            // The page itself says what is wrong with the sheet.
            return Answers.NotThere(context);
        }
    }

    private LiveLook Look(HttpContext context) => LiveLook.Of(settings, Sheet(context), answers.UsualUnit);

    private static string Sheet(HttpContext context) => context.Request.Query["sheet"].ToString();
}
