using System;
using LoggerBox.Protocol.Cues;

namespace LoggerBox.Host.Report.Card.Drawing;

/// <summary>A word as the four seven-segment digits show it, and two seconds of sounder and lamp as bars.</summary>
internal static class CueDrawing
{
    public const double WordWidth = 41;
    public const double StripWidth = Tenths * Tenth + 8;
    public const double Height = 12;

    private const int Tenths = 22;
    private const double Tenth = 2;

    private const double DigitStep = 10.2;
    private const double DigitWidth = 6.2;
    private const double DigitHeight = 9.6;
    private const double Segment = 1.6;

    public static void Word(ICanvas canvas, double x, double y, string word)
    {
        for (int i = 0; i < word.Length; i++)
        {
            Digit(canvas, x + (i * DigitStep), y, DisplayWords.Of(word[i]));
        }
    }

    public static void Strip(ICanvas canvas, double x, double y, CardCue cue)
    {
        Pattern(canvas, x, y + 0.6, 4.2, cue.Sounder, cue.Repeats);
        Pattern(canvas, x, y + 6.6, 3.4, cue.Lamp, cue.Repeats);
        canvas.Lines(0.4, false, (x, y + 5.7), (x + (Tenths * Tenth), y + 5.7));
        if (cue.Repeats)
        {
            double end = x + (Tenths * Tenth) + 2;
            canvas.Filled((end, y + 1.6), (end + 4.5, y + 5.7), (end, y + 9.8));
        }
    }

    private static void Pattern(ICanvas canvas, double x, double y, double height, string pattern, bool repeats)
    {
        int length = repeats ? Tenths : Math.Min(Tenths, pattern.Length);
        int from = -1;
        for (int i = 0; i <= length; i++)
        {
            bool on = i < length && pattern.Length > 0 && pattern[i % pattern.Length] == '#';
            if (on && from < 0)
            {
                from = i;
            }
            else if (!on && from >= 0)
            {
                double left = x + (from * Tenth);
                double right = x + (i * Tenth) - 0.3;
                canvas.Filled((left, y), (right, y), (right, y + height), (left, y + height));
                from = -1;
            }
        }
    }

    /// <param name="lit">Bits from 0: top, top right, bottom right, bottom, bottom left, top left, middle.</param>
    private static void Digit(ICanvas canvas, double x, double y, byte lit)
    {
        const double right = DigitWidth;
        const double middle = DigitHeight / 2;
        (double X1, double Y1, double X2, double Y2)[] segments =
        [
            (0, 0, right, 0), (right, 0, right, middle), (right, middle, right, DigitHeight), (0, DigitHeight, right, DigitHeight),
            (0, middle, 0, DigitHeight), (0, 0, 0, middle), (0, middle, right, middle),
        ];
        for (int bit = 0; bit < segments.Length; bit++)
        {
            if ((lit & (1 << bit)) != 0)
            {
                var (x1, y1, x2, y2) = segments[bit];
                canvas.Lines(Segment, false, (x + x1, y + y1), (x + x2, y + y2));
            }
        }
    }
}
