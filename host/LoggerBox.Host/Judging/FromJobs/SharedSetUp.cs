using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using LoggerBox.Host.DataSheets;

namespace LoggerBox.Host.Judging.FromJobs;

/// <summary>What is no limit and yet belongs to a sheet: how the truck is tested, as far as the sheets of all the jobs say the same.</summary>
public sealed class SharedSetUp
{
    private readonly IReadOnlyList<DataSheet> sheets;

    /// <param name="sheets">One a job, all with the same hold speed.</param>
    public SharedSetUp(IReadOnlyList<DataSheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        this.sheets = sheets;
    }

    public double HoldRpm => sheets[0].HoldRpm;

    /// <summary>Null where the sheets differ.</summary>
    public double? HoldWindowRpm => Agreed(sheet => sheet.HoldWindowRpm);

    /// <summary>Whole sections, each only with what it has to say.</summary>
    public string Sections()
    {
        var text = new StringBuilder();
        Section(text, "oil", ("temperature_c", Oil()));
        Section(
            text,
            "stall",
            ("limit_s", Number(Agreed(sheet => sheet.StallLimitSeconds))),
            ("cooldown_s", Number(Agreed(sheet => sheet.StallCooldownSeconds))),
            ("reverse_allowed", sheets.Any(sheet => !sheet.StallReverseAllowed) ? "false" : null));
        Section(text, "pickup", ("pulses_per_rev", Number(Agreed(sheet => sheet.PickupPulsesPerRevolution))));
        Section(text, "site", ("altitude_m", Number(Agreed(sheet => sheet.SiteAltitudeMetres))), ("air_c", Number(Agreed(sheet => sheet.SiteAirCelsius))));
        Section(
            text,
            "ports",
            ("clutch", sheets.All(sheet => sheet.ClutchPortPerGear) ? "\"per-gear\"" : null),
            ("converter", sheets.All(sheet => sheet.ConverterPortAtOutlet) ? "\"out\"" : null));
        return text.ToString();
    }

    private static void Section(StringBuilder text, string name, params (string Key, string? Value)[] entries)
    {
        if (entries.All(entry => entry.Value is null))
        {
            return;
        }

        text.Append(CultureInfo.InvariantCulture, $"\n[{name}]  # as in the sheets of all jobs\n");
        foreach ((string key, string? value) in entries.Where(entry => entry.Value is not null))
        {
            text.Append(CultureInfo.InvariantCulture, $"{key} = {value}\n");
        }
    }

    private string? Oil()
    {
        Limit? first = sheets[0].OilCelsius;
        if (first is not { IsJudged: true } || !sheets.All(sheet => Limit.SameBounds(sheet.OilCelsius, first)))
        {
            return null;
        }

        string[] bounds = [.. new[] { ("min", first.Min), ("max", first.Max) }.Where(bound => bound.Item2 is not null).Select(bound => $"{bound.Item1} = {Number(bound.Item2)}")];
        return $"{{ {string.Join(", ", bounds)} }}";
    }

    private double? Agreed(Func<DataSheet, double?> of)
    {
        double? first = of(sheets[0]);
        return sheets.All(sheet => of(sheet) == first) ? first : null;
    }

    private static string? Number(double? value) => value?.ToString("0.####", CultureInfo.InvariantCulture);
}
