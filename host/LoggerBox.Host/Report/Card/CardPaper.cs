using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Report.Pdf;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Card;

/// <summary>The card as one sheet of paper; every place on it is fixed, and what somebody typed is cut to its line.</summary>
public static class CardPaper
{
    internal const double Left = 24;
    internal const double Width = 595 - (2 * Left);

    private const double Top = 18;
    private const double Line = 13.8;

    // Letters that the font does not have are printed wider than they are measured.
    private const double SureShare = 0.9;

    // Left edges of a step's columns.
    private const double Name = 22;
    private const double Pedal = 178;
    private const double Target = 315;
    private const double HowLong = 440;

    public static byte[] Render(TruckCard card, DateTimeOffset made)
    {
        ArgumentNullException.ThrowIfNull(card);
        using Paper paper = new($"{card.Truck}: {CardWords.Kind}", made);
        double y = WriteHead(paper, card);
        y = WriteCautions(paper, card.Cautions, y);
        foreach (CardStage stage in card.Stages)
        {
            y = WriteStage(paper, stage, y);
        }

        y = CardPaperSignals.WriteHoses(paper, card.Hoses, y + 2);
        CardPaperSignals.WriteCues(paper, card.Cues, y);
        return paper.Finish(CardWords.Deferring);
    }

    /// <summary>One line that never grows wider than its place: smaller letters first, then cut.</summary>
    internal static void Fitted(Paper paper, double x, double y, string text, double width, double size, bool bold = false, XBrush? ink = null)
    {
        double smallest = size * 0.8;
        for (double tried = size; tried >= smallest; tried -= 0.5)
        {
            if (paper.Broken(text, Font(tried, bold), width).Count == 1)
            {
                paper.At(x, y + size - tried, text, Font(tried, bold), ink ?? XBrushes.Black);
                return;
            }
        }

        XFont font = Font(smallest, bold);
        paper.At(x, y + size - smallest, paper.Broken(text, font, width - size)[0] + "…", font, ink ?? XBrushes.Black);
    }

    private static double WriteHead(Paper paper, TruckCard card)
    {
        Fitted(paper, Left, Top, card.Truck, Width - 190, 20, bold: true);
        paper.At(Left + Width, Top + 7, CardWords.Kind, Font(9, false), XBrushes.Black, XStringFormats.BaseLineRight);
        return WriteFigures(paper, card.Figures, Top + 25);
    }

    /// <summary>Where the figures come from, in two lines at the most: who doubts one must find it.</summary>
    private static double WriteFigures(Paper paper, string figures, double y)
    {
        const double size = 8;
        IReadOnlyList<string> lines = paper.Broken(figures, Font(size, false), Width * SureShare);
        if (lines.Count <= 1)
        {
            Fitted(paper, Left, y, figures, Width, 9);
            return y + 13;
        }

        paper.At(Left, y, lines[0], Font(size, false), XBrushes.Black);
        paper.At(Left, y + 9.4, lines[1] + (lines.Count > 2 ? "…" : ""), Font(size, false), XBrushes.Black);
        return y + 21;
    }

    private static double WriteCautions(Paper paper, IReadOnlyList<string> cautions, double y)
    {
        const double padding = 4;
        const double line = 13;
        (string Text, XFont Font)[] lines = [.. cautions.SelectMany((caution, i) =>
        {
            XFont font = i == 0 ? Font(11, true) : Font(10, false);
            return paper.Broken(caution, font, Width - 16).Select(text => (text, font));
        })];
        double height = (lines.Length * line) + (2 * padding);
        paper.Page.DrawRectangle(new XPen(XColors.Black, 2.2), Left, y, Width, height);
        for (int i = 0; i < lines.Length; i++)
        {
            paper.At(Left + 8, y + padding + (i * line), lines[i].Text, lines[i].Font, XBrushes.Black);
        }

        return y + height + 5;
    }

    private static double WriteStage(Paper paper, CardStage stage, double y)
    {
        paper.Page.DrawRectangle(XBrushes.Black, Left, y, Width, Line + 2);
        Fitted(paper, Left + 5, y + 2, stage.Name, 110, 11, bold: true, XBrushes.White);
        Fitted(paper, Left + 112, y + 2, stage.SetUp, Width - 117, 10.5, ink: XBrushes.White);
        y += Line + 2;
        foreach (CardStep step in stage.Steps)
        {
            WriteStep(paper, step, y);
            y += Line;
        }

        return y + 2.5;
    }

    private static void WriteStep(Paper paper, CardStep step, double y)
    {
        bool measured = step.Number is not null;
        if (!measured)
        {
            paper.Page.DrawRectangle(Paper.Band, Left, y, Width, Line);
        }

        paper.At(Left + 16, y + 1, step.Number?.ToString(CultureInfo.InvariantCulture) ?? "", Font(11, true), XBrushes.Black, XStringFormats.BaseLineRight);
        Fitted(paper, Left + Name, y + 1, step.Name, Pedal - Name - 4, 11, bold: measured);
        Fitted(paper, Left + Pedal, y + 1, step.Pedal, Target - Pedal - 4, 11);
        Fitted(paper, Left + Target, y + 1, step.Target, HowLong - Target - 4, 11, bold: measured);
        Fitted(paper, Left + HowLong, y + 1, step.HowLong, Width - HowLong, 11);
        paper.Page.DrawLine(new XPen(XColors.Black, 0.4), Left, y + Line, Left + Width, y + Line);
    }

    private static XFont Font(double size, bool bold) => bold ? PaperFonts.Bold(size) : PaperFonts.Plain(size);
}
