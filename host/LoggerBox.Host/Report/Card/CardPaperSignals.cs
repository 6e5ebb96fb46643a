using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Report.Card.Drawing;
using LoggerBox.Host.Report.Pdf;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Card;

/// <summary>The lower half of the sheet: hoses and ports, and what the logger signals.</summary>
internal static class CardPaperSignals
{
    private const double Gap = 12;
    private const double Column = (CardPaper.Width - Gap) / 2;
    private const double MeansAt = CueDrawing.WordWidth + CueDrawing.StripWidth + 8;
    private const double Size = 9.5;
    private const double Leading = 11.2;
    private const double Apart = 1.6;

    public static double WriteHoses(Paper paper, CardHoses hoses, double y)
    {
        Title(paper, CardPaper.Left, y, CardWords.HosesTitle);
        HoseDrawing.Draw(new PaperCanvas(paper, CardPaper.Left, y + 12), hoses);
        double x = CardPaper.Left + HoseDrawing.Width + Gap;
        double width = CardPaper.Left + CardPaper.Width - x;
        double row = y;
        foreach (CardHose hose in hoses.Hoses)
        {
            CardPaper.Fitted(paper, x, row, $"{hose.Channel} {hose.Name}", 92, 11, bold: true);
            CardPaper.Fitted(paper, x + 92, row, hose.Port, width - 92, 10);
            row += 14.5;
        }

        foreach (string line in paper.Broken(CardWords.HosesOrder + " " + CardWords.Button, PaperFonts.Plain(Size), width))
        {
            paper.At(x, row + 2, line, PaperFonts.Plain(Size), XBrushes.Black);
            row += Leading;
        }

        return y + Math.Max(HoseDrawing.Height + 13, row - y + 4);
    }

    public static void WriteCues(Paper paper, IReadOnlyList<CardCue> cues, double y)
    {
        Title(paper, CardPaper.Left, y, CardWords.CuesTitle);
        CardPaper.Fitted(paper, CardPaper.Left + 150, y + 1, CardWords.CuesLegend, CardPaper.Width - 150, 9);
        y += 15;
        double half = cues.Sum(cue => HeightOf(paper, cue)) / 2;
        double x = CardPaper.Left;
        double row = y;
        double lowest = y;
        foreach (CardCue cue in cues)
        {
            if (row - y >= half && x == CardPaper.Left)
            {
                x += Column + Gap;
                row = y;
            }

            WriteCue(paper, cue, x, row);
            row += HeightOf(paper, cue);
            lowest = Math.Max(lowest, row);
        }

        CardPaper.Fitted(paper, CardPaper.Left, lowest + 1, CardWords.NoCue, CardPaper.Width, 8.5);
    }

    private static void WriteCue(Paper paper, CardCue cue, double x, double y)
    {
        PaperCanvas canvas = new(paper, x, y);
        CueDrawing.Word(canvas, 2, 2, cue.Display);
        CueDrawing.Strip(canvas, CueDrawing.WordWidth + 4, 0, cue);
        double line = y + 0.5;
        foreach (string text in Lines(paper, cue))
        {
            paper.At(x + MeansAt, line, text, Font(cue), XBrushes.Black);
            line += Leading;
        }
    }

    private static double HeightOf(Paper paper, CardCue cue) => (Lines(paper, cue).Count * Leading) + Apart;

    private static IReadOnlyList<string> Lines(Paper paper, CardCue cue) => paper.Broken(cue.Means, Font(cue), Column - MeansAt);

    private static void Title(Paper paper, double x, double y, string text) => paper.At(x, y, text, PaperFonts.Bold(11), XBrushes.Black);

    private static XFont Font(CardCue cue) => cue.Urgent ? PaperFonts.Bold(Size) : PaperFonts.Plain(Size);
}
