using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Live;
using LoggerBox.Host.Report;

namespace LoggerBox.App.Watching.Screen;

/// <summary>Draws what is read as the lines of a screen. Words say everything; nothing hangs on a colour.</summary>
internal static class Frame
{
    private const int LargeWidth = 80;
    private const int LargeHeight = 24;

    private const int SpeedColumn = 40;
    private const int PressureColumn = 26;
    private const int RowsOfWords = 2;

    /// <returns>As many lines as the screen has, none longer than it is wide.</returns>
    public static string[] Lines(WatchView view, int width, int height)
    {
        IEnumerable<string> body = width >= LargeWidth && height >= LargeHeight ? Large(view, width - 2) : Small(view, width - 2);
        string foot = Messages.WatchFoot(view.Port, view.Sheet, view.HasKeys);
        IEnumerable<string> rows = body.Concat(Enumerable.Repeat("", height)).Take(height - 1).Append(foot);
        return [.. rows.Select(row => Fit(row.Length == 0 ? row : " " + row, width))];
    }

    private static IEnumerable<string> Large(WatchView view, int width)
    {
        LiveMoment moment = view.Moment;
        IReadOnlyList<LiveFigure> pressures = moment.Pressures;
        return
        [
            "",
            Beside(SpeedColumn, Label(moment.Speed), Messages.WatchClockName(moment)),
            .. Across(SpeedColumn, Large(moment.Speed, SpeedColumn), BigFigures.Of(ClockFigure(moment), SpeedColumn - 1)),
            ReadingText.Beside(moment.Speed),
            "",
            Beside(PressureColumn, [.. pressures.Select(Label)]),
            .. Across(PressureColumn, [.. pressures.Select(figure => Large(figure, PressureColumn))]),
            Beside(PressureColumn, [.. pressures.Select(ReadingText.Beside)]),
            "",
            Messages.WatchDoing(moment),
            .. Wrapped(Say(view), width).Concat(Enumerable.Repeat("", RowsOfWords)).Take(RowsOfWords),
            .. Wrapped(Messages.WatchCaptured(moment), width),
        ];
    }

    /// <summary>What must not be missed first: a screen may have room for three lines.</summary>
    private static IEnumerable<string> Small(WatchView view, int width)
    {
        LiveMoment moment = view.Moment;
        string[] figures = [ReadingText.Of(moment.Speed), .. moment.Pressures.Select(ReadingText.Of)];
        string[] words = [Say(view), moment.Clock, .. figures, Messages.WatchDoing(moment), Messages.WatchCaptured(moment)];
        return words.Where(word => word.Length > 0).SelectMany(word => Wrapped(word, width));
    }

    private static string Say(WatchView view) =>
        view.Sentence.Length > 0 ? view.Sentence
        : string.Join(" ", new[] { view.Moment.Sentence, Messages.WatchNow(view.Moment) }.Where(word => word.Length > 0));

    // Whole seconds, never more than are left.
    private static string ClockFigure(LiveMoment moment) =>
        (moment.StallSecondsLeft ?? moment.CooldownSecondsLeft) is double seconds ? $"{(int)seconds,2}" : "";

    // The units stand where they stood: what gets longer or shorter grows to the left.
    private static string[] Large(LiveFigure figure, int column) => BigFigures.Of(figure.Text.PadLeft(figure.Unit is "rpm" or "kPa" ? 4 : 5), column - 1);

    private static string Label(LiveFigure figure) => $"{figure.Name}, {Figure.Unit(figure.Unit)}";

    private static IEnumerable<string> Across(int column, params string[][] blocks) =>
        Enumerable.Range(0, BigFigures.Rows).Select(row => Beside(column, [.. blocks.Select(block => block[row])]));

    private static string Beside(int column, params string[] texts) => string.Concat(texts.Select(text => Fit(text, column - 1).PadRight(column))).TrimEnd();

    private static IEnumerable<string> Wrapped(string text, int width)
    {
        if (text.Length <= width)
        {
            yield return text;
            yield break;
        }

        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : line + " " + word;
        }

        yield return line;
    }

    // A port's name may hold anything: what would move the cursor is made visible.
    private static string Fit(string text, int width) =>
        string.Concat(text.Take(Math.Max(0, width)).Select(sign => char.IsControl(sign) ? '?' : sign)).TrimEnd();
}
