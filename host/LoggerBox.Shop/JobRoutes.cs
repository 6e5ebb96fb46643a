using System.Globalization;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Shop.Pages;
using LoggerBox.Shop.Sheets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>Writes work orders.</summary>
internal sealed class JobRoutes(Answers answers, ShopSettings settings)
{
    private const double MostHours = 1_000_000;

    private readonly SheetFolder folder = new(settings.SheetFolder);

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapReading("/jobs/new", context => Answers.Page(context, () => JobForm.Render(folder.Names())));
        routes.MapPost("/jobs", Create);
    }

    private Task Create(HttpContext context) => answers.Change(context, (file, form) => "/gates/" + file.Jobs.Create(Details(form), settings.Clock.GetLocalNow()));

    private JobDetails Details(IFormCollection form)
    {
        string sheet = form.One(JobForm.Sheet);
        string text = sheet.Length == 0 ? "" : folder.Text(sheet);
        string named = text.Length == 0 ? "" : DataSheetReader.Parse(text, sheet).Truck;
        string truck = form.One(JobForm.Truck).Trim();
        return new JobDetails(
            truck.Length > 0 ? truck : named.Length > 0 ? named : throw new UserErrorException("A job needs the truck's name: nothing was written; go back and write it."),
            form.One(JobForm.Serial).Trim(),
            Number(form.One(JobForm.Hours)),
            form.One(JobForm.Fuel).Trim(),
            form.One(JobForm.Complaint).ReplaceLineEndings("\n").Trim(),
            form.One(JobForm.Technician).Trim(),
            sheet,
            text);
    }

    private static double? Number(string written) =>
        string.IsNullOrWhiteSpace(written) ? null
        : double.TryParse(written, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out double hours) && hours <= MostHours ? hours
        : throw new UserErrorException("The hour meter is a number from 0 to 1000000, as 4211 or 4211.5: nothing was written; go back and write it so.");
}
