using System;
using System.IO;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>The one font that every report carries in itself, so that it prints alike everywhere: DejaVu Sans, plain and bold.</summary>
internal sealed class PaperFonts : IFontResolver
{
    private const string Family = "Paper";
    private const string PlainFace = "DejaVuSans";
    private const string BoldFace = "DejaVuSans-Bold";

    static PaperFonts() => GlobalFontSettings.FontResolver = new PaperFonts();

    private PaperFonts()
    {
    }

    /// <param name="points">Size.</param>
    public static XFont Plain(double points) => new(Family, points, XFontStyleEx.Regular);

    /// <param name="points">Size.</param>
    public static XFont Bold(double points) => new(Family, points, XFontStyleEx.Bold);

    public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? BoldFace : PlainFace);

    public byte[] GetFont(string faceName)
    {
        string name = "LoggerBox.Host.Report.Pdf.Fonts." + faceName;
        using Stream font = typeof(PaperFonts).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} is missing in this build.");
        byte[] bytes = new byte[font.Length];
        font.ReadExactly(bytes);
        return bytes;
    }
}
