using System.Linq;
using LoggerBox.Host.Report.Pdf;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Card.Drawing;

/// <summary>Draws on a sheet of paper, from a corner of its own.</summary>
internal sealed class PaperCanvas(Paper paper, double left, double top) : ICanvas
{
    public void Lines(double thickness, bool dashed, params (double X, double Y)[] points)
    {
        XPen pen = new(XColors.Black, thickness);
        if (dashed)
        {
            pen.DashStyle = XDashStyle.Dash;
        }

        paper.Page.DrawLines(pen, Placed(points));
    }

    public void Filled(params (double X, double Y)[] corners) => paper.Page.DrawPolygon(XBrushes.Black, Placed(corners), XFillMode.Winding);

    public void Circle(double x, double y, double radius, double thickness) =>
        paper.Page.DrawEllipse(new XPen(XColors.Black, thickness), XBrushes.White, left + x - radius, top + y - radius, 2 * radius, 2 * radius);

    public void Label(double x, double y, string text, double size, bool bold = false, bool centred = false) => paper.At(
        left + x,
        top + y - size,
        text,
        bold ? PaperFonts.Bold(size) : PaperFonts.Plain(size),
        XBrushes.Black,
        centred ? XStringFormats.BaseLineCenter : null);

    private XPoint[] Placed((double X, double Y)[] points) => [.. points.Select(point => new XPoint(left + point.X, top + point.Y))];
}
