using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Cues;

public class CueTableTests
{
    [Fact]
    public void The_document_is_the_table()
    {
        IEnumerable<string> written = CueTable.All.Select(signal =>
            $"{(int)signal.Cue} {signal.Cue} '{signal.Display}' '{signal.Sounder}' '{signal.Lamp}' {(signal.Repeats ? "yes" : "no")} {signal.Rank}");
        IEnumerable<string> documented = Rows().Select(row => $"{row[0]} {row[1]} '{Bare(row[3])}' '{Bare(row[4])}' '{Bare(row[5])}' {row[6]} {row[7]}");
        Assert.Equal(written, documented);
        Assert.All(Rows(), row => Assert.True(row[2].Length > 10, $"{row[1]} says what it means"));
    }

    [Fact]
    public void Every_cue_has_one_signal() => Assert.Equal(Enum.GetValues<Cue>().Where(cue => cue != Cue.None).Order(), CueTable.All.Select(signal => signal.Cue).Order());

    [Fact]
    public void Every_word_can_be_shown_and_told_from_the_others()
    {
        Assert.All(CueTable.All, signal => Assert.All(signal.Display, place => Assert.True(place == '#' || DisplayWords.CanShow(place), $"{signal.Cue}: {place}")));
        Assert.All(CueTable.All, signal => Assert.True(signal.Display.Length is 0 or DisplayWords.Places));
        string[] shown = CueTable.All.Where(signal => signal.Display.Length > 0).Select(signal => string.Join(' ', signal.Display.Select(DisplayWords.Of))).ToArray();
        Assert.Equal(shown.Length, shown.Distinct().Count());
    }

    [Fact]
    public void A_lamp_tells_by_its_pattern_what_must_not_be_confused()
    {
        CueSignal[] urgent = CueTable.All.Where(signal => signal.Repeats && signal.Rank != 9 && signal.Display.Length > 0).ToArray();
        Assert.Equal(urgent.Length, urgent.Select(signal => signal.Lamp).Distinct().Count());
    }

    [Fact]
    public void What_says_let_go_now_interrupts_everything_else() =>
        Assert.All(CueTable.All, signal => Assert.Equal(signal.Cue is Cue.StallStop or Cue.Overspeed, signal.Rank == 9));

    private static List<string[]> Rows() => File.ReadAllLines(Path.Combine(Root(), "hardware-notes", "cues.md"))
        .Where(line => line.StartsWith('|') && char.IsAsciiDigit(line[2]))
        .Select(line => line.Split('|')[1..^1].Select(cell => cell.Trim()).ToArray())
        .ToList();

    private static string Bare(string cell) => cell.Trim('`');

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "LoggerBox.sln")))
        {
            folder = folder.Parent;
        }

        return folder.FullName;
    }
}
