using System;
using System.Globalization;
using LoggerBox.Host;
using LoggerBox.Host.Units;
using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop.Traces;

/// <summary>Which stretch of a recording is wanted, seconds from its start, in how many columns.</summary>
internal sealed record WindowRequest(double From, double To, int Columns, PressureUnit Unit)
{
    private const int FewestColumns = 16;

    /// <exception cref="UserErrorException">It is no stretch, or no unit.</exception>
    public static WindowRequest Read(IQueryCollection query) =>
        TryNumber(query["from"], out double from) && TryNumber(query["to"], out double to) && from <= to
        && int.TryParse(query["columns"], NumberStyles.None, CultureInfo.InvariantCulture, out int columns)
        && PressureUnits.TryParse(query["unit"].ToString(), out PressureUnit unit)
            ? new WindowRequest(from, to, Math.Clamp(columns, FewestColumns, TraceWindow.MostColumns), unit)
            : throw new UserErrorException("A picture needs from, to, columns and unit: reload the page.");

    private static bool TryNumber(string? text, out double number) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);
}
