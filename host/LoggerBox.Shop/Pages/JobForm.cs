using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>A new work order: what a person knows that no sensor does.</summary>
internal static class JobForm
{
    public const string Truck = "truck";
    public const string Serial = "serial";
    public const string Hours = "hours";
    public const string Fuel = "fuel";
    public const string Complaint = "complaint";
    public const string Technician = "technician";
    public const string Sheet = "sheet";

    public static string Render(IReadOnlyList<string> sheets) => Frame.Render("New job", "/", page =>
    {
        page.Element("h1", "New job");
        page.Open("form", "gates", ("method", "post"), ("action", "/jobs")).Open("div", "columns");
        Field.Write(page, "job", Truck, "Truck", "200", isWanted: true);
        Field.Write(page, "job", Serial, "Serial", "200");
        Field.Write(page, "job", Hours, "Hour meter, h", "12");
        Field.Write(page, "job", Fuel, "Fuel, as the data sheet names it", "200");
        Field.Write(page, "job", Complaint, "Complaint, in the customer's words", "2000");
        Field.Write(page, "job", Technician, "Technician", "200");
        Field.WriteChoice(page, "job", Sheet, "Data sheet", [("", "none: readings are shown, not judged"), .. sheets.Select(name => (name, name))]);
        page.Close("div").Element("p", "The sheet's text is kept with the job: what it is judged by stays, whatever becomes of the file.", "remark");
        page.Open("p", "actions").Element("button", "Write the job", null, ("type", "submit")).Close("p").Close("form");
    });
}
