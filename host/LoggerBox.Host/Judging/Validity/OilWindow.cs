using LoggerBox.Host.DataSheets;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>Whether the oil was warm enough. The window is the sheet's; one printed sheet asks for 27 to 38 °C, another for 82 to 93 °C.</summary>
public static class OilWindow
{
    /// <summary>Without a window in the sheet only oil that no published window would take is called cold, °C.</summary>
    private const double ColdWithoutWindow = 50;

    public static bool IsCold(double celsius, Limit? window) => celsius < (window?.Min ?? ColdWithoutWindow);
}
