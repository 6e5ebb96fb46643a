using System.Collections.Generic;
using LoggerBox.Host.DataSheets;

namespace LoggerBox.Host.Report.Card;

/// <summary>Where the three hoses go on this truck.</summary>
public sealed record CardHoses(bool ClutchPortPerGear, bool ConverterAtOutlet, IReadOnlyList<CardHose> Hoses)
{
    public static CardHoses Of(DataSheet sheet) => new(
        sheet.ClutchPortPerGear,
        sheet.ConverterPortAtOutlet,
        [
            new CardHose(1, "MAIN", "line pressure port"),
            new CardHose(2, "CLUTCH", sheet.ClutchPortPerGear ? "port of the gear in test" : "port that both share"),
            new CardHose(3, "CONVERTER", sheet.ConverterPortAtOutlet ? "outlet" : "inlet"),
        ]);
}

/// <param name="Channel">As the logger's sockets are numbered.</param>
public sealed record CardHose(int Channel, string Name, string Port);
