using System;
using System.Collections.Generic;
using System.Text;

namespace LoggerBox.App.Watching.Screen;

/// <summary>What must be sent to turn one frame into the next: for a slow line, only the places that differ.</summary>
internal static class ScreenChange
{
    // To move the cursor takes about so many signs: what is equal for less is sent along.
    private const int WorthAMove = 7;

    /// <param name="before">Of a screen that was just cleared: empty.</param>
    public static string Between(IReadOnlyList<string> before, IReadOnlyList<string> after)
    {
        var sent = new StringBuilder();
        for (int row = 0; row < after.Count; row++)
        {
            string old = row < before.Count ? before[row] : "";
            int width = Math.Max(old.Length, after[row].Length);
            AppendRow(sent, row, old.PadRight(width), after[row].PadRight(width));
        }

        return sent.ToString();
    }

    private static void AppendRow(StringBuilder sent, int row, string old, string now)
    {
        for (int start = Differs(old, now, 0); start < now.Length;)
        {
            int end = start + 1;
            int next = Differs(old, now, end);
            while (next < now.Length && next - end < WorthAMove)
            {
                end = next + 1;
                next = Differs(old, now, end);
            }

            sent.Append($"\e[{row + 1};{start + 1}H").Append(now, start, end - start);
            start = next;
        }
    }

    private static int Differs(string old, string now, int from)
    {
        while (from < now.Length && old[from] == now[from])
        {
            from++;
        }

        return from;
    }
}
