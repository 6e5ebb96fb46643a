using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Xunit;

namespace LoggerBox.Host.Tests.Report.Card;

/// <summary>What Poppler's pdftotext reads from a document, with the box of each word in points.</summary>
internal static class PaperWords
{
    public static (int Pages, IReadOnlyList<PaperWord> Words) Of(byte[] document)
    {
        string boxes = Run(document, "-bbox");
        return (Regex.Count(boxes, "<page "), [.. Regex.Matches(boxes, "<word xMin=\"(.*?)\" yMin=\"(.*?)\" xMax=\"(.*?)\" yMax=\"(.*?)\">(.*?)</word>").Select(match =>
        {
            double[] edges = [.. match.Groups.Values.Skip(1).Take(4).Select(group => double.Parse(group.Value, CultureInfo.InvariantCulture))];
            return new PaperWord(WebUtility.HtmlDecode(match.Groups[5].Value), edges[0], edges[1], edges[2], edges[3]);
        })]);
    }

    /// <summary>All text without spaces and line ends.</summary>
    public static string Text(byte[] document) => Regex.Replace(Run(document, "-raw"), @"\s+", "");

    public static string FirstPage(byte[] document) => Regex.Replace(Run(document, "-raw", "-l", "1"), @"\s+", "");

    private static string Run(byte[] document, params string[] how)
    {
        string path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, document);
            using Process reader = Process.Start(new ProcessStartInfo(PopplerFactAttribute.Program, ["-enc", "UTF-8", .. how, path, "-"]) { RedirectStandardOutput = true, StandardOutputEncoding = Encoding.UTF8 })!;
            string text = reader.StandardOutput.ReadToEnd();
            reader.WaitForExit();
            Assert.Equal(0, reader.ExitCode);
            return text;
        }
        finally
        {
            File.Delete(path);
        }
    }
}

internal sealed record PaperWord(string Text, double Left, double Top, double Right, double Bottom)
{
    /// <summary>The letters themselves overlap, not only the room for accents and descenders around them.</summary>
    public bool Covers(PaperWord other)
    {
        double wide = Math.Min(Right, other.Right) - Math.Max(Left, other.Left);
        double high = Math.Min(Bottom, other.Bottom) - Math.Max(Top, other.Top);
        return wide > 1 && high > 0.45 * Math.Min(Bottom - Top, other.Bottom - other.Top);
    }
}
