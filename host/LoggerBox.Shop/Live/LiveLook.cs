using System;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Live;
using LoggerBox.Host.Units;
using LoggerBox.Shop.Sheets;

namespace LoggerBox.Shop.Live;

/// <summary>What one who looks wants beside the readings: the limits of a sheet, in its unit.</summary>
/// <param name="Sheet">Its name in the folder; empty for none.</param>
internal sealed record LiveLook(string Sheet, PressureUnit Unit, LiveLimits? Limits)
{
    /// <exception cref="LoggerBox.Host.UserErrorException">There is no such sheet, or it is refused.</exception>
    /// <param name="usual">The unit where no sheet is chosen.</param>
    public static LiveLook Of(ShopSettings settings, string sheet, Func<PressureUnit> usual)
    {
        if (sheet.Length == 0)
        {
            return new LiveLook("", settings.Unit ?? usual(), null);
        }

        DataSheet read = DataSheetReader.Parse(new SheetFolder(settings.SheetFolder).Text(sheet), sheet);
        PressureUnit unit = settings.Unit ?? read.Unit;
        return new LiveLook(sheet, unit, new LiveLimits(read, read.EngineFor(null), unit));
    }
}
