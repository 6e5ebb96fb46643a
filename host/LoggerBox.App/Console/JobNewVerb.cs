using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>Writes a work order: what a person knows that no sensor does.</summary>
internal static class JobNewVerb
{
    public static Command Declare(Terminal terminal)
    {
        var truck = Text("--truck", Messages.TruckOption, "NAME");
        var serial = Text("--serial", Messages.SerialOption, "TEXT");
        var hours = Number("--hours", Messages.HoursOption, "H");
        var fuel = Text("--fuel", Messages.FuelOption, "NAME");
        var complaint = Text("--complaint", Messages.ComplaintOption, "TEXT");
        var technician = Text("--technician", Messages.TechnicianOption, "NAME");
        var sheet = SharedOptions.Sheet();
        var altitude = Number("--altitude", Messages.AltitudeOption, "M");
        var air = Number("--air", Messages.AirOption, "C");
        var oilLevel = Text("--oil-level", Messages.OilLevelOption, "TEXT");
        var oilLook = Text("--oil-look", Messages.OilLookOption, "TEXT");
        var oil = Number("--oil", Messages.OilOption, "C");
        var oilHow = Text("--oil-how", Messages.OilHowOption, "TEXT");
        var archive = SharedOptions.Archive();
        var verb = new Command("new", Messages.JobNewVerb)
        {
            truck, serial, hours, fuel, complaint, technician, sheet, altitude, air, oilLevel, oilLook, oil, oilHow, archive,
        };
        verb.SetAction(line => Unbuilt.Run("job new"));
        return verb;
    }

    private static Option<string?> Text(string name, string description, string shape) => new(name) { Description = description, HelpName = shape };

    private static Option<double?> Number(string name, string description, string shape) => new(name) { Description = description, HelpName = shape };
}
