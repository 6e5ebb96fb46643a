using System;
using System.Globalization;
using LoggerBox.Host.Report;

namespace LoggerBox.App;

/// <summary>How far something long is, in words.</summary>
internal static class ProgressMessages
{
    public static string Reading(string file) => $"Reading {file}";

    public static string Capturing(string file) => $"Finding holds in {file}";

    public static string Checking(string file) => $"Checking {file}";

    public static string CheckingArchive => "Checking the archive";

    public static string ReadingArchived(string id) => $"Reading {id}";

    public static string Judging(string what) => $"Judging {what}";

    public static string Fetching(uint session) => $"Session {session}";

    public static string Bytes(string work, long done, long whole, double rate, double? left) =>
        PlainText.Of(string.Create(CultureInfo.InvariantCulture, $"{work}: {done / 1000.0:F0} of {whole / 1000.0:F0} kB, {rate / 1000:F1} kB/s{Left(left)}"));

    public static string Share(string work, long done, long whole, double? left) =>
        PlainText.Of(string.Create(CultureInfo.InvariantCulture, $"{work}: {(whole > 0 ? 100 * done / whole : 100)} %{Left(left)}"));

    public static string Elapsed(string work, double seconds) => PlainText.Of(string.Create(CultureInfo.InvariantCulture, $"{work}: {Math.Floor(seconds):F0} s so far"));

    private static string Left(double? seconds) => seconds switch
    {
        null => "",
        < 90 => string.Create(CultureInfo.InvariantCulture, $", {Math.Ceiling(seconds.Value):F0} s left"),
        _ => string.Create(CultureInfo.InvariantCulture, $", {Math.Ceiling(seconds.Value / 60):F0} min left"),
    };
}
