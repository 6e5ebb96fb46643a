using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>One reading's limits as a grey bar, the reading as a tick with its uncertainty.</summary>
internal static class LimitBand
{
    private const double Width = 50;
    private const double Height = 7;

    public static void Draw(Paper paper, double x, double y, ReadingRow row)
    {
        if (BandScale.Of(row) is not { } scale)
        {
            return;
        }

        XPen thin = new(XColors.Black, 0.8);
        XPen thick = new(XColors.Black, 1.6);
        double Place(double share) => x + (share * Width);
        paper.Page.DrawRectangle(Paper.Band, Place(scale.Left), y + 1.5, (scale.Right - scale.Left) * Width, Height - 3);
        paper.Page.DrawLine(thin, Place(scale.Least), y + (Height / 2), Place(scale.Most), y + (Height / 2));
        paper.Page.DrawLine(thick, Place(scale.Tick), y, Place(scale.Tick), y + Height);
    }
}
