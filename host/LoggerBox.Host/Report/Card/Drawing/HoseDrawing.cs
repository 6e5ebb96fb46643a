namespace LoggerBox.Host.Report.Card.Drawing;

/// <summary>
/// Where the three hoses go, in signs like those of ISO 1219-1: pump a circle with a filled triangle, regulator a square with arrow and spring,
/// cooler a lozenge, directional valve in squares, cylinders with pistons. Hoses are thick; each ends in the number of its socket.
/// </summary>
internal static class HoseDrawing
{
    public const double Width = 292;
    public const double Height = 104;

    private const double Thin = 1;
    private const double Hose = 2.4;
    private const double Small = 8;

    private const double MainLine = 40;
    private const double SpillLine = 80;

    public static void Draw(ICanvas canvas, CardHoses hoses)
    {
        DrawPump(canvas);
        DrawRegulator(canvas);
        DrawConverter(canvas);
        DrawClutches(canvas);
        Gauge(canvas, 44, MainLine, -29, "1", dashed: false);
        if (hoses.ClutchPortPerGear)
        {
            Gauge(canvas, 218, 20, -11, "2", dashed: false);
            Gauge(canvas, 213, 60, 0, "2", dashed: true);
        }
        else
        {
            Gauge(canvas, 147, MainLine, -29, "2", dashed: false);
        }

        Gauge(canvas, hoses.ConverterAtOutlet ? 158 : 92, SpillLine, 15, "3", dashed: false);
    }

    private static void DrawPump(ICanvas canvas)
    {
        Tank(canvas, 18, 94);
        canvas.Lines(Thin, false, (18, 98), (18, 80));
        canvas.Circle(18, 68, 12, Thin);
        canvas.Filled((18, 56), (13.5, 64), (22.5, 64));
        canvas.Lines(Thin, false, (18, 56), (18, MainLine), (162, MainLine));
        canvas.Label(33, 72, "pump", Small);
    }

    private static void DrawRegulator(ICanvas canvas)
    {
        canvas.Lines(Thin, false, (74, MainLine), (74, 48));
        Box(canvas, 64, 48, 20, 18);
        canvas.Lines(Thin, false, (78, 48), (78, 60));
        canvas.Filled((78, 66), (75, 59), (81, 59));
        canvas.Lines(Thin, false, (84, 57), (86, 53), (90, 61), (94, 53), (98, 61), (100, 57));
        canvas.Lines(Thin, true, (74, 44), (57, 44), (57, 57), (64, 57));
        canvas.Lines(Thin, false, (74, 66), (74, SpillLine), (112, SpillLine));
        canvas.Label(103, 61, "regulator", Small);
        Box(canvas, 112, MainLine - 7, 20, 14);
        canvas.Lines(Thin, false, (110, MainLine + 11), (134, MainLine - 11));
        canvas.Label(105, MainLine - 14, "inching", Small);
    }

    private static void DrawConverter(ICanvas canvas)
    {
        canvas.Circle(124, SpillLine, 13, Thin);
        canvas.Lines(Thin, false, (124, SpillLine - 13), (124, SpillLine + 13));
        canvas.Label(140, SpillLine - 4, "converter", Small);
        canvas.Lines(Thin, false, (137, SpillLine), (178, SpillLine));
        canvas.Lines(Thin, false, (190, SpillLine - 12), (202, SpillLine), (190, SpillLine + 12), (178, SpillLine), (190, SpillLine - 12));
        canvas.Filled((190, SpillLine - 12), (187, SpillLine - 17), (193, SpillLine - 17));
        canvas.Filled((190, SpillLine + 12), (187, SpillLine + 17), (193, SpillLine + 17));
        canvas.Label(228, SpillLine + 14, "cooler", Small);
        canvas.Lines(Thin, false, (202, SpillLine), (214, SpillLine), (214, 98));
        Tank(canvas, 214, 94);
    }

    private static void DrawClutches(ICanvas canvas)
    {
        Box(canvas, 162, MainLine - 9, 14, 18);
        Box(canvas, 176, MainLine - 9, 14, 18);
        Box(canvas, 190, MainLine - 9, 14, 18);
        canvas.Label(169, MainLine + 3, "F", Small, bold: true, centred: true);
        canvas.Label(183, MainLine + 3, "N", Small, bold: true, centred: true);
        canvas.Label(197, MainLine + 3, "R", Small, bold: true, centred: true);
        canvas.Label(208, MainLine + 3, "selector", Small);
        Clutch(canvas, MainLine - 9, 20, "F clutch");
        Clutch(canvas, MainLine + 9, 60, "R clutch");
    }

    private static void Clutch(ICanvas canvas, double from, double y, string name)
    {
        canvas.Lines(Thin, false, (183, from), (183, y), (232, y));
        Box(canvas, 232, y - 8, 26, 16);
        canvas.Lines(2.4, false, (243, y - 7), (243, y + 7));
        canvas.Lines(Thin, false, (243, y), (268, y));
        canvas.Label(234, y < MainLine ? y - 11 : y + 16, name, Small);
    }

    /// <summary>A port, the hose from it and the socket's number at its end.</summary>
    private static void Gauge(ICanvas canvas, double x, double y, double up, string number, bool dashed)
    {
        canvas.Filled((x - 3, y - 3), (x + 3, y - 3), (x + 3, y + 3), (x - 3, y + 3));
        canvas.Lines(Hose, dashed, (x, y), (x, y + up));
        canvas.Circle(x, y + up, 8.5, 1.6);
        canvas.Label(x, y + up + 4, number, 11, bold: true, centred: true);
    }

    private static void Tank(ICanvas canvas, double x, double y) => canvas.Lines(Thin, false, (x - 11, y), (x - 11, y + 8), (x + 11, y + 8), (x + 11, y));

    private static void Box(ICanvas canvas, double x, double y, double width, double height)
    {
        canvas.Lines(Thin, false, (x, y), (x + width, y), (x + width, y + height), (x, y + height), (x, y));
    }
}
