using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using LoggerBox.Host.Report.Card;
using Xunit;

namespace LoggerBox.Host.Tests.Report.Card;

/// <summary>The sheet of paper, read back by Poppler: every word with its box.</summary>
public class CardPaperTests
{
    private const double Wide = 595;
    private const double High = 842;

    [PopplerFact]
    public void It_is_one_page_with_every_word_on_it_and_none_over_another()
    {
        Assert.All(CardSheets.All, sheet =>
        {
            (int pages, IReadOnlyList<PaperWord> words) = PaperWords.Of(CardPaper.Render(TruckCard.Of(sheet), DateTimeOffset.UnixEpoch));
            Assert.Equal(1, pages);
            Assert.All(words, word => Assert.True(word.Left >= 20 && word.Right <= Wide - 20 && word.Top >= 10 && word.Bottom <= High - 10, $"{word} is off the page of {sheet.FileName}"));
            Assert.All(words, word => Assert.DoesNotContain(words, other => !ReferenceEquals(word, other) && word.Covers(other)));
        });
    }

    [PopplerFact]
    public void It_says_all_of_the_card()
    {
        TruckCard card = TruckCard.Of(CardSheets.Example("common-port-psi.toml"));
        string text = PaperWords.Text(CardPaper.Render(card, DateTimeOffset.UnixEpoch));
        IEnumerable<string> expected =
        [
            card.Truck,
            .. card.Cautions,
            .. card.Stages.SelectMany(stage => (string[])[stage.Name, stage.SetUp]),
            .. card.Stages.SelectMany(stage => stage.Steps).SelectMany(step => (string[])[step.Name, step.Pedal, step.Target, step.HowLong]),
            .. card.Hoses.Hoses.SelectMany(hose => (string[])[hose.Name, hose.Port]),
            .. card.Cues.SelectMany(cue => cue.Means.Split(' ')),
        ];
        Assert.All(expected, part => Assert.Contains(Bare(part), text, StringComparison.Ordinal));
    }

    /// <summary>
    /// ISO 9241-303 (from memory): characters of at least 16 minutes of arc; an arm's length is 600 mm. DejaVu Sans's capitals and digits are 0.729 of
    /// its size, as its OS/2 table says; a box of Poppler's is 1.164 of it.
    /// </summary>
    [PopplerFact]
    public void Target_speeds_can_be_read_at_arms_length()
    {
        IReadOnlyList<PaperWord> words = PaperWords.Of(CardPaper.Render(TruckCard.Of(CardSheets.Example("common-port-psi.toml")), DateTimeOffset.UnixEpoch)).Words;
        PaperWord[] speeds = [.. words.Where(word => word.Text is "1925" or "2075" or "2550" or "2650" or "1800" or "2070")];
        Assert.Equal(6 + 6, speeds.Length);
        Assert.All(speeds, word =>
        {
            double millimetres = (word.Bottom - word.Top) / 1.164 * 0.729 / 72 * 25.4;
            Assert.True(Math.Atan(millimetres / 600) * 180 / Math.PI * 60 >= 16, $"{word} is {millimetres:F2} mm high");
        });
    }

    /// <summary>Letters that set the direction, bells and markup of a sheet's text are no more than text, and its name stays on its line.</summary>
    [PopplerFact]
    public void A_hostile_sheet_does_no_harm()
    {
        byte[] sheet = CardPaper.Render(TruckCard.Of(CardSheets.Hostile), DateTimeOffset.UnixEpoch);
        Assert.DoesNotMatch("/JavaScript|/Launch|/URI|/EmbeddedFile|/OpenAction", System.Text.Encoding.Latin1.GetString(sheet));
        string text = PaperWords.Text(sheet);
        Assert.DoesNotContain('\u202E', text);
        Assert.Contains("NEVERtouchaliftortiltlever", text, StringComparison.Ordinal);
    }

    private static string Bare(string text) => Regex.Replace(text, @"\s+", "");
}
