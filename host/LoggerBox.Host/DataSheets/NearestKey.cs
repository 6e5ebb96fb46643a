using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.DataSheets;

/// <summary>The key that was meant, where a misspelt one is close to it: two letters wrong, missing or exchanged at most.</summary>
internal static class NearestKey
{
    private const int MostSlips = 2;

    public static string? To(string written, IEnumerable<string> known)
    {
        (string key, int slips) = known.Select(key => (key, Slips(written, key))).DefaultIfEmpty(("", int.MaxValue)).MinBy(pair => pair.Item2);
        return slips <= MostSlips && slips < key.Length ? key : null;
    }

    // Levenshtein's distance. Keys are short; a long one is no slip of the keyboard.
    private static int Slips(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > MostSlips)
        {
            return int.MaxValue;
        }

        int[] above = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            int[] row = new int[b.Length + 1];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int change = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[j] = Math.Min(change, Math.Min(above[j], row[j - 1]) + 1);
            }

            above = row;
        }

        return above[b.Length];
    }
}
