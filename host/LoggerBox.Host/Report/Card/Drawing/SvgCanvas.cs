using System.Linq;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Host.Report.Card.Drawing;

/// <summary>Draws into an SVG of a page.</summary>
internal sealed class SvgCanvas(Markup page) : ICanvas
{
    private const string Ink = "#000";

    public void Lines(double thickness, bool dashed, params (double X, double Y)[] points) => page
        .Open(
            "polyline",
            null,
            ("points", Points(points)),
            ("fill", "none"),
            ("stroke", Ink),
            ("stroke-width", Markup.Number(thickness)),
            ("stroke-dasharray", dashed ? "3 2" : "none"))
        .Close("polyline");

    public void Filled(params (double X, double Y)[] corners) => page.Open("polygon", null, ("points", Points(corners)), ("fill", Ink)).Close("polygon");

    public void Circle(double x, double y, double radius, double thickness) => page
        .Open(
            "circle",
            null,
            ("cx", Markup.Number(x)),
            ("cy", Markup.Number(y)),
            ("r", Markup.Number(radius)),
            ("fill", "#fff"),
            ("stroke", Ink),
            ("stroke-width", Markup.Number(thickness)))
        .Close("circle");

    public void Label(double x, double y, string text, double size, bool bold = false, bool centred = false) => page
        .Open(
            "text",
            null,
            ("x", Markup.Number(x)),
            ("y", Markup.Number(y)),
            ("font-size", Markup.Number(size)),
            ("font-weight", bold ? "700" : "400"),
            ("text-anchor", centred ? "middle" : "start"))
        .Text(text)
        .Close("text");

    private static string Points((double X, double Y)[] points) => string.Join(' ', points.Select(point => $"{Markup.Number(point.X)},{Markup.Number(point.Y)}"));
}
