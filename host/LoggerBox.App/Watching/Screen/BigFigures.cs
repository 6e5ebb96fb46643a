using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.App.Watching.Screen;

/// <summary>Figures five rows high, of signs that every terminal has: to be read from the seat.</summary>
internal static class BigFigures
{
    public const int Rows = 5;

    private static readonly Dictionary<char, string[]> Shapes = new()
    {
        ['0'] = [" ## ", "#  #", "#  #", "#  #", " ## "],
        ['1'] = ["  # ", " ## ", "  # ", "  # ", " ###"],
        ['2'] = ["### ", "   #", " ## ", "#   ", "####"],
        ['3'] = ["### ", "   #", " ## ", "   #", "### "],
        ['4'] = ["#  #", "#  #", "####", "   #", "   #"],
        ['5'] = ["####", "#   ", "### ", "   #", "### "],
        ['6'] = [" ## ", "#   ", "### ", "#  #", " ## "],
        ['7'] = ["####", "   #", "  # ", " #  ", " #  "],
        ['8'] = [" ## ", "#  #", " ## ", "#  #", " ## "],
        ['9'] = [" ## ", "#  #", " ###", "   #", " ## "],
        [' '] = ["    ", "    ", "    ", "    ", "    "],
        ['.'] = [" ", " ", " ", " ", "#"],
        ['-'] = ["    ", "    ", "### ", "    ", "    "],
        ['–'] = ["    ", "    ", "####", "    ", "    "],
    };

    /// <summary>The rows of a figure; one that is too wide stands in its ordinary size.</summary>
    public static string[] Of(string figure, int width)
    {
        string[] rows = [.. Enumerable.Range(0, Rows).Select(row => string.Join(' ', figure.Select(sign => Shapes[sign][row])))];
        return rows[0].Length <= width ? rows : ["", "", figure, "", ""];
    }
}
