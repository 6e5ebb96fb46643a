using LoggerBox.Host.DataSheets;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>Whether the oil was warm enough. The window is the sheet's; one printed sheet asks for 27 to 38 °C, another for 82 to 93 °C.</summary>
public static class OilWindow
{
    /// <summary>Without a window in the sheet: trucks are tested at 70 °C and more; colder than this is no warm truck, °C. Common practice, no source.</summary>
    public const double UsualLeast = 60;

    /// <summary>Null where the sheet's window is open downwards.</summary>
    public static double? Least(Limit? window) => window is null ? UsualLeast : window.Min;

    /// <summary>How much warmer it should have been, °C; 0 where it was warm enough.</summary>
    public static double Shortfall(double celsius, Limit? window) => Least(window) is double least && celsius < least ? least - celsius : 0;

    public static bool IsCold(double celsius, Limit? window) => Shortfall(celsius, window) > 0;
}
