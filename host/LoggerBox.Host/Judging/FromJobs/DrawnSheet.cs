using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Judging.FromJobs;

/// <summary>A data sheet as text, its limits drawn from healthy jobs of the shop, and marked so in each place where one could take it for the manual's.</summary>
public static class DrawnSheet
{
    public const int FewestJobs = 3;

    /// <summary>What a sheet can hold, in the order of writing.</summary>
    private static readonly string[] EngineKeys = ["idle_rpm", "governed_rpm", "relief_drop_rpm", "stall_forward_rpm", "stall_reverse_rpm", "run_up_s"];

    private static readonly string[] Gears = ["neutral", "forward", "reverse"];

    private static readonly string[] Pressures = ["main", "clutch", "converter"];

    /// <param name="jobs">At least three, all healthy, of one kind of truck.</param>
    /// <param name="unit">Of the pressures in the sheet.</param>
    public static string Write(string truck, string fuel, SharedSetUp setUp, IReadOnlyList<JobReadings> jobs, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        ArgumentNullException.ThrowIfNull(setUp);
        string names = string.Join(", ", jobs.Select(job => job.Id));
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# Limits drawn from the shop's own healthy jobs, not from a manual. {jobs.Count} jobs on {Trucks(jobs)}:\n");
        foreach (JobReadings job in jobs)
        {
            text.Append(CultureInfo.InvariantCulture, $"#   {job.Id}, {job.Date:yyyy-MM-dd}{(job.Serial.Length == 0 ? "" : ", serial " + Remark(job.Serial))}\n");
        }

        text.Append("# Each limit is a tolerance interval: with 95 % confidence 95 % of such trucks read within it. More jobs make it narrower.\n");
        text.Append("# Where the manual gives a figure, the manual counts: write a sheet of its own for that, do not mix the two.\n\n");
        text.Append(CultureInfo.InvariantCulture, $"[truck]\nname = {Quoted(truck)}\n");
        text.Append(CultureInfo.InvariantCulture, $"source = {Quoted($"drawn from the shop's own jobs {names} ({jobs.Min(job => job.Date):yyyy-MM-dd} to {jobs.Max(job => job.Date):yyyy-MM-dd}), not the manual's")}\n");
        text.Append(CultureInfo.InvariantCulture, $"drawn_from_jobs = {Quoted(names)}\n");
        text.Append(CultureInfo.InvariantCulture, $"\n[engine]\n{(fuel.Length == 0 ? "" : $"fuel = {Quoted(fuel)}\n")}");
        Lines(text, jobs, "engine", EngineKeys, 1);
        text.Append(CultureInfo.InvariantCulture, $"\n[pressure]\nunit = \"{unit.Code()}\"\n");
        foreach (string condition in (string[])["idle", "hold", "stall"])
        {
            if (condition == "hold")
            {
                text.Append(CultureInfo.InvariantCulture, $"\n[pressure.hold]\nrpm = {setUp.HoldRpm:0.#}\n{(setUp.HoldWindowRpm is double window ? $"window_rpm = {Number(window)}\n" : "")}");
            }

            foreach (string gear in Gears)
            {
                Section(text, jobs, $"pressure.{condition}.{gear}", Pressures, 1000 / unit.InPascal());
            }
        }

        Section(text, jobs, "difference", ["clutch_forward_reverse"], 1000 / unit.InPascal());
        Section(text, jobs, "engagement", ["time_s"], 1);
        return text.Append(setUp.Sections()).ToString();
    }

    private static void Section(StringBuilder text, IReadOnlyList<JobReadings> jobs, string section, string[] keys, double scale)
    {
        var lines = new StringBuilder();
        Lines(lines, jobs, section, keys, scale);
        if (lines.Length > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[{section}]\n").Append(lines);
        }
    }

    // A reading that some of the jobs lack is left out where fewer than three have it.
    private static void Lines(StringBuilder text, IReadOnlyList<JobReadings> jobs, string section, string[] keys, double scale)
    {
        foreach (string key in keys)
        {
            // One limit of time stands for both clutches.
            string[] places = key == "time_s" ? ["engagement.forward", "engagement.reverse"] : [$"{section}.{key}"];
            List<List<SheetReading>> series = [.. places.Select(place => jobs.Where(job => job.Limits.ContainsKey(place)).Select(job => job.Limits[place]).ToList())];
            if (series.Exists(readings => readings.Count < FewestJobs))
            {
                continue;
            }

            List<(double Low, double High)> intervals = [.. series.Select(readings => ToleranceInterval.Of(
                [.. readings.Select(reading => reading.Value * scale)], [.. readings.Select(reading => reading.Uncertainty * scale)]))];
            double high = intervals.Max(interval => interval.High);
            double digit = Digit(key, high);
            double low = Math.Floor(intervals.Min(interval => interval.Low) / digit) * digit;
            string min = low <= 0 || key is "clutch_forward_reverse" or "run_up_s" ? "" : $"min = {Number(low)}, ";
            text.Append(CultureInfo.InvariantCulture, $"{key} = {{ {min}max = {Number(Math.Ceiling(high / digit) * digit)} }}  # {series[0].Count} jobs\n");
        }
    }

    // Rounded outwards to what such a figure is printed with.
    private static double Digit(string key, double high) => key.EndsWith("_rpm", StringComparison.Ordinal) ? 1 : key.EndsWith("_s", StringComparison.Ordinal) ? 0.01 : high < 100 ? 0.1 : 1;

    private static string Number(double value) => Math.Round(value, 3).ToString("0.###", CultureInfo.InvariantCulture);

    private static string Trucks(IReadOnlyList<JobReadings> jobs)
    {
        int known = jobs.Where(job => job.Serial.Length > 0).Select(job => job.Serial).Distinct(StringComparer.OrdinalIgnoreCase).Count();
        return known switch { 0 => "trucks without serial", 1 => "one truck", _ => $"{known} trucks" };
    }

    private static string Remark(string text) => string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter));

    private static string Quoted(string text) => "\"" + Remark(text).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
