using System;
using System.Diagnostics;
using System.IO;
using LoggerBox.EndToEnd.Tests;

namespace LoggerBox.ShopBench.Pictures;

/// <summary>The first sheet of what the program prints, as Poppler draws it.</summary>
internal static class PrintedPage
{
    private const string Program = "/usr/bin/pdftoppm";
    private const string DotsPerInch = "80";

    /// <param name="file">Of the picture (.png).</param>
    /// <param name="words">The verb that prints, without its --out.</param>
    public static void Take(string file, params string[] words)
    {
        string paper = Path.ChangeExtension(file, ".pdf");
        LoggerBoxCommand.Run([.. words, "--out", paper]).Expect(0);
        using Process drawing = Process.Start(Program, ["-r", DotsPerInch, "-f", "1", "-l", "1", "-gray", "-singlefile", "-png", paper, Path.ChangeExtension(file, null)]);
        drawing.WaitForExit();
        File.Delete(paper);
        Console.WriteLine(drawing.ExitCode == 0 ? file : $"{Program} failed: {file} was not drawn.");
    }
}
