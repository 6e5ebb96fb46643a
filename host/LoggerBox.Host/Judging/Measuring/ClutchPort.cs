using System;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// Where each clutch has a port of its own, one hose sees one gear at a time and is moved between them: no pressure in the other gear
/// is no reading, neither a leak nor a drive that was cut.
/// </summary>
public static class ClutchPort
{
    public static MeasuredHold Seen(MeasuredHold hold, DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(hold);
        ArgumentNullException.ThrowIfNull(sheet);
        bool isElsewhere = sheet.ClutchPortPerGear && hold.Gear is Gear.Forward or Gear.Reverse && HoldGates.ClutchIsEmpty(hold);
        return isElsewhere ? hold with { Clutch = null, IsClutchHoseElsewhere = true } : hold;
    }
}
