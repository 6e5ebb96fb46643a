using System;
using System.Globalization;

namespace LoggerBox.Host.Traces;

/// <summary>A time as a clock shows it: 14:05:07.25, or with its date, as ISO 8601 writes it.</summary>
internal static class ClockTime
{
    private static readonly string[] OfDay = [@"h\:mm\:ss", @"h\:mm\:ss\.FFFFFFF"];

    private static readonly string[] Dated =
    [
        "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd HH:mm:ssK",
    ];

    /// <param name="microseconds">Since midnight, or since 1970.</param>
    public static bool TryParse(string text, out long microseconds)
    {
        if (TimeSpan.TryParseExact(text, OfDay, CultureInfo.InvariantCulture, out TimeSpan ofDay))
        {
            microseconds = ofDay.Ticks / TimeSpan.TicksPerMicrosecond;
            return true;
        }

        bool isDated = DateTimeOffset.TryParseExact(text, Dated, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset dated);
        microseconds = (dated - DateTimeOffset.UnixEpoch).Ticks / TimeSpan.TicksPerMicrosecond;
        return isDated;
    }
}
