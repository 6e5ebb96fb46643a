using System;
using System.Collections.Generic;
using LoggerBox.Host.DataSheets;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report.Card;

/// <summary>The one page that hangs at the truck while it is tested: everything that it says, whatever it is printed on.</summary>
/// <param name="Figures">Which data sheet the figures are from, and which fuel.</param>
/// <param name="Cautions">The one that kills first.</param>
public sealed record TruckCard(
    string Truck,
    string Figures,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<CardStage> Stages,
    CardHoses Hoses,
    IReadOnlyList<CardCue> Cues)
{
    /// <param name="fuel">The fuel in use; null takes the sheet's own.</param>
    /// <exception cref="UserErrorException">The sheet has tables by fuel and none for this one, or times that no logger guards.</exception>
    public static TruckCard Of(DataSheet sheet, string? fuel = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        EngineLimits engine = sheet.EngineFor(fuel);
        PlanRecord plan = SheetPlan.Make(sheet, fuel);
        if (PlanBounds.Check(plan) == PlanFault.StallTimes)
        {
            throw new UserErrorException(CardWords.TimesNotGuarded(sheet));
        }

        return new TruckCard(
            sheet.Truck.Length == 0 ? "Truck not named" : sheet.Truck,
            CardWords.Figures(sheet, engine.Fuel ?? fuel),
            CardWords.Cautions(sheet),
            new CardOrder(sheet, engine, plan).Stages(),
            CardHoses.Of(sheet),
            CardCue.All());
    }
}
