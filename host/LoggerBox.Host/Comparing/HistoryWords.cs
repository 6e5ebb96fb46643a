using LoggerBox.Host.Units;

namespace LoggerBox.Host.Comparing;

/// <summary>How a place in a data sheet is said, and in which unit its reading is shown.</summary>
public static class HistoryWords
{
    /// <returns>Words, unit, and the factor from the reading's own unit (kPa, rpm, s).</returns>
    public static (string Words, string Unit, double Scale) Of(string place, PressureUnit unit)
    {
        string words = place.Replace("pressure.", "", System.StringComparison.Ordinal)
            .Replace("engine.", "", System.StringComparison.Ordinal)
            .Replace("_rpm", "", System.StringComparison.Ordinal)
            .Replace("_s", "", System.StringComparison.Ordinal)
            .Replace('.', ' ')
            .Replace('_', ' ');
        if (place.EndsWith("_rpm", System.StringComparison.Ordinal))
        {
            return (words + " speed", "rpm", 1);
        }

        bool isTime = place.EndsWith("_s", System.StringComparison.Ordinal) || place.StartsWith("engagement.", System.StringComparison.Ordinal);
        return isTime ? (words, "s", 1) : (words, unit.Code(), 1000 / unit.InPascal());
    }

    public static string Verdict(ReadingHistory history) => (history.Changed, history.Drifts) switch
    {
        (true, true) => "changed, drifts",
        (true, false) => "changed",
        (false, true) => "drifts",
        _ => "",
    };
}
