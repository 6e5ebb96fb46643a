using System;
using System.Collections.Generic;
using System.Globalization;
using LoggerBox.Host.Report.Card.Drawing;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Host.Report.Card;

/// <summary>The card as a page that needs nothing beside itself and prints on one sheet.</summary>
public static class CardPage
{
    public static string Render(TruckCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        Markup page = LonePage.Begin($"{card.Truck}: {CardWords.Kind}", CardStyle.Text);
        page.Element("h1", card.Truck).Element("p", CardWords.Kind, "kind").Element("p", card.Figures, "figures");
        WriteCautions(page, card.Cautions);
        foreach (CardStage stage in card.Stages)
        {
            WriteStage(page, stage);
        }

        WriteHoses(page, card.Hoses);
        WriteCues(page, card.Cues);
        page.Element("footer", CardWords.Deferring);
        return LonePage.End(page);
    }

    private static void WriteCautions(Markup page, IReadOnlyList<string> cautions)
    {
        page.Open("ul", "cautions");
        foreach (string caution in cautions)
        {
            page.Element("li", caution);
        }

        page.Close("ul");
    }

    private static void WriteStage(Markup page, CardStage stage)
    {
        page.Open("table").Open("caption").Element("strong", stage.Name).Text(" " + stage.SetUp).Close("caption");
        foreach (CardStep step in stage.Steps)
        {
            page.Open("tr", step.Number is null ? "between" : null)
                .Element("td", step.Number?.ToString(CultureInfo.InvariantCulture) ?? "", "number")
                .Element("th", step.Name, "name", ("scope", "row"))
                .Element("td", step.Pedal, "pedal")
                .Element("td", step.Target, "target")
                .Element("td", step.HowLong)
                .Close("tr");
        }

        page.Close("table");
    }

    private static void WriteHoses(Markup page, CardHoses hoses)
    {
        page.Element("h2", CardWords.HosesTitle).Open("div", "hoses");
        Drawing(page, HoseDrawing.Width, HoseDrawing.Height, CardWords.HosesTitle, canvas => HoseDrawing.Draw(canvas, hoses));
        page.Open("div").Open("dl");
        foreach (CardHose hose in hoses.Hoses)
        {
            page.Element("dt", $"{hose.Channel} {hose.Name}").Element("dd", hose.Port);
        }

        page.Close("dl").Element("p", CardWords.HosesOrder).Element("p", CardWords.Button).Close("div").Close("div");
    }

    private static void WriteCues(Markup page, IReadOnlyList<CardCue> cues)
    {
        page.Element("h2", CardWords.CuesTitle).Element("p", CardWords.CuesLegend, "legend").Open("ul", "cues");
        foreach (CardCue cue in cues)
        {
            page.Open("li", cue.Urgent ? "urgent" : null);
            Drawing(page, CueDrawing.WordWidth, CueDrawing.Height, cue.Display.Trim() is { Length: > 0 } word ? word : "no word", canvas => CueDrawing.Word(canvas, 2, 1, cue.Display));
            Drawing(page, CueDrawing.StripWidth, CueDrawing.Height, CardWords.Heard(cue), canvas => CueDrawing.Strip(canvas, 0, 0, cue));
            page.Element("span", cue.Means).Close("li");
        }

        page.Close("ul").Element("p", CardWords.NoCue, "nocue");
    }

    private static void Drawing(Markup page, double width, double height, string says, Action<ICanvas> draw)
    {
        page.Open(
            "svg",
            null,
            ("viewBox", $"0 0 {Markup.Number(width)} {Markup.Number(height)}"),
            ("style", $"width:{Markup.Number(width)}pt;height:{Markup.Number(height)}pt"),
            ("role", "img"),
            ("aria-label", says));
        draw(new SvgCanvas(page));
        page.Close("svg");
    }
}
