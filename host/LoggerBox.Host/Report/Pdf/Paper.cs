using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>
/// A4 sheets that are filled from top to bottom; measures in points. Every text passes through here, so that nothing that a customer, a
/// sheet or a logger wrote can turn the letters round.
/// </summary>
internal sealed class Paper : IDisposable
{
    public const double Left = 48;
    public const double Width = 595 - (2 * Left);
    private const double Top = 44;
    private const double Bottom = 842 - 52;
    private const double Leading = 1.32;

    private readonly PdfDocument document = new();
    private XGraphics? page;

    public Paper(string title, DateTimeOffset made)
    {
        document.Info.Title = PlainText.Of(title);
        document.Info.CreationDate = made.UtcDateTime;
        NewPage();
    }

    /// <summary>Nearly black, grey that still copies, and the grey of bands.</summary>
    public static XBrush Ink { get; } = new XSolidBrush(XColor.FromArgb(0x14, 0x18, 0x1c));

    public static XBrush Soft { get; } = new XSolidBrush(XColor.FromArgb(0x50, 0x58, 0x60));

    public static XBrush Band { get; } = new XSolidBrush(XColor.FromArgb(0xd6, 0xdb, 0xdf));

    /// <summary>Where the next line begins.</summary>
    public double Y { get; private set; }

    public XGraphics Page => page!;

    public static double LineOf(XFont font) => font.Size * Leading;

    public void Space(double points) => Y += points;

    /// <summary>Begins a new sheet where there is no room for so much.</summary>
    public void Need(double height)
    {
        if (Y + height > Bottom)
        {
            NewPage();
        }
    }

    public void NewPage()
    {
        page?.Dispose();
        PdfPage sheet = document.AddPage();
        sheet.Size = PageSize.A4;
        page = XGraphics.FromPdfPage(sheet);
        Y = Top;
    }

    /// <summary>One line at a place of its own; the place on the sheet stays.</summary>
    public void At(double x, double y, string text, XFont font, XBrush ink, XStringFormat? align = null) =>
        Page.DrawString(PlainText.Of(text), font, ink, new XPoint(x, y + font.Size), align ?? XStringFormats.BaseLineLeft);

    /// <summary>A paragraph, broken where it is too wide.</summary>
    public void Text(string text, XFont font, XBrush ink, double indent = 0, double after = 0)
    {
        foreach (string line in Broken(text, font, Width - indent))
        {
            Need(LineOf(font));
            At(Left + indent, Y, line, font, ink);
            Y += LineOf(font);
        }

        Y += after;
    }

    public void Heading(string text)
    {
        XFont font = PaperFonts.Bold(11);
        Need(60);
        Y += 12;
        At(Left, Y, text, font, Ink);
        Y += LineOf(font) + 2;
        Page.DrawLine(new XPen(XColor.FromArgb(0x14, 0x18, 0x1c), 0.8), Left, Y - 2, Left + Width, Y - 2);
        Y += 3;
    }

    /// <summary>Puts a foot under every sheet and writes the document.</summary>
    public byte[] Finish(string foot)
    {
        page?.Dispose();
        page = null;
        XFont font = PaperFonts.Plain(7.5);
        for (int i = 0; i < document.PageCount; i++)
        {
            using XGraphics sheet = XGraphics.FromPdfPage(document.Pages[i]);
            string number = string.Create(CultureInfo.InvariantCulture, $"{i + 1} of {document.PageCount}");
            sheet.DrawString(PlainText.Of(foot), font, Soft, new XPoint(Left, Bottom + 26));
            sheet.DrawString(number, font, Soft, new XPoint(Left + Width, Bottom + 26), XStringFormats.BaseLineRight);
        }

        using MemoryStream bytes = new();
        document.Save(bytes, closeStream: false);
        return bytes.ToArray();
    }

    public void Dispose()
    {
        page?.Dispose();
        document.Dispose();
    }

    /// <summary>Lines of a text that are no wider than this; a word that is wider by itself is broken inside.</summary>
    public IReadOnlyList<string> Broken(string text, XFont font, double width)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in PlainText.Of(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (WidthOf(longer, font) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            line = WordBroken(word, font, width, lines);
        }

        lines.Add(line);
        return lines;
    }

    /// <summary>Fills lines with what of a word does not fit into one; returns the rest.</summary>
    private string WordBroken(string word, XFont font, double width, List<string> lines)
    {
        int from = 0;
        for (int fits = Fitting(word, from, font, width); from + fits < word.Length; fits = Fitting(word, from, font, width))
        {
            lines.Add(word.Substring(from, fits));
            from += fits;
        }

        return word[from..];
    }

    /// <summary>How many letters from here on fit, one at the least. Never more is measured than about a line: a word can be as long as a book.</summary>
    private int Fitting(string word, int from, XFont font, double width)
    {
        bool Fits(int count) => WidthOf(word.Substring(from, count), font) <= width;
        int left = word.Length - from;
        int over = 2;
        while (over <= left && Fits(over))
        {
            over *= 2;
        }

        (int fits, over) = (over / 2, Math.Min(over, left + 1));
        while (over - fits > 1)
        {
            int middle = (fits + over) / 2;
            (fits, over) = Fits(middle) ? (middle, over) : (fits, middle);
        }

        return fits > 1 && fits < left && char.IsHighSurrogate(word[from + fits - 1]) ? fits - 1 : fits;
    }

    private double WidthOf(string text, XFont font) => Page.MeasureString(text, font).Width;
}
