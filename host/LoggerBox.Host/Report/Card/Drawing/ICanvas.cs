namespace LoggerBox.Host.Report.Card.Drawing;

/// <summary>Black lines on white, in points from the upper left; what draws on it does not know whether it is a page or paper.</summary>
internal interface ICanvas
{
    void Lines(double thickness, bool dashed, params (double X, double Y)[] points);

    void Filled(params (double X, double Y)[] corners);

    void Circle(double x, double y, double radius, double thickness);

    /// <param name="x">Left edge, or the middle where <paramref name="centred"/>.</param>
    /// <param name="y">Base line.</param>
    void Label(double x, double y, string text, double size, bool bold = false, bool centred = false);
}
