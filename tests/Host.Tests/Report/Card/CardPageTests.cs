using System;
using System.IO;
using System.Linq;
using System.Net;
using System.Numerics;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Card;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Report.Card;

public class CardPageTests
{
    [Fact]
    public void It_is_well_formed_and_loads_nothing()
    {
        Assert.All(CardSheets.All, sheet =>
        {
            string page = CardPage.Render(TruckCard.Of(sheet));
            XDocument.Parse(Regex.Replace(page.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal), "<meta ([^>]*)>", "<meta $1/>"));
            Assert.Contains("default-src &#39;none&#39;", page, StringComparison.Ordinal);
            Assert.DoesNotMatch("<script|src=|href=|url\\(|@import", page);
            Assert.DoesNotContain('\u202E', page);
        });
    }

    [Fact]
    public void It_says_all_of_the_card()
    {
        TruckCard card = TruckCard.Of(CardSheets.Example("metric-kgfcm2.toml"));
        string text = WebUtility.HtmlDecode(CardPage.Render(card));
        Assert.All(card.Cautions, caution => Assert.Contains(caution, text, StringComparison.Ordinal));
        Assert.All(card.Stages.SelectMany(stage => stage.Steps), step => Assert.True(text.Contains(step.Name, StringComparison.Ordinal) && text.Contains(step.Target, StringComparison.Ordinal) && text.Contains(step.HowLong, StringComparison.Ordinal)));
        Assert.All(card.Cues, cue => Assert.Contains(cue.Means, text, StringComparison.Ordinal));
    }

    /// <summary>A signal that a greeting PC causes says nothing to the seat; every other one of the logger stands on the card, as the logger gives it.</summary>
    [Fact]
    public void Every_signal_to_the_seat_is_explained()
    {
        CardCue[] cues = [.. CardCue.All()];
        Cue[] ofTheLogger = [Cue.LinkAlive, Cue.PlanChosen, Cue.ReadingsLost, Cue.ClockNotSet, Cue.SettingsDamaged, Cue.Restarted];
        Assert.Equal(CueTable.All.Where(signal => !ofTheLogger.Contains(signal.Cue)).Select(signal => CueWords.Of(signal.Cue)).Order(), cues.Select(cue => cue.Means).Order());
        Assert.All(cues, cue => Assert.Contains(CueTable.All, signal => signal.Sounder == cue.Sounder && signal.Lamp == cue.Lamp && signal.Repeats == cue.Repeats && CueWords.Of(signal.Cue) == cue.Means));
        Assert.Equal("StoP", cues[0].Display);
    }

    /// <summary>A seven-segment digit lights as many segments as its code has bits; the drawing has a line for each.</summary>
    [Fact]
    public void A_word_is_drawn_as_the_display_shows_it()
    {
        string page = CardPage.Render(TruckCard.Of(CardSheets.Bare));
        foreach (CardCue cue in CardCue.All().Where(cue => cue.Display.Trim().Length > 0))
        {
            Match drawing = Regex.Match(page, $"aria-label=\"{Regex.Escape(WebUtility.HtmlEncode(cue.Display.Trim()))}\">(.*?)</svg>", RegexOptions.Singleline);
            Assert.Equal(cue.Display.Sum(place => BitOperations.PopCount(DisplayWords.Of(place))), Regex.Count(drawing.Groups[1].Value, "<polyline"));
        }
    }

    [Fact]
    public void The_terminal_says_the_same()
    {
        using StringWriter output = new();
        TruckCard card = TruckCard.Of(CardSheets.Hostile);
        CardText.Write(output, card);
        string text = output.ToString();
        Assert.DoesNotContain('\u202E', text);
        Assert.All(card.Cautions, caution => Assert.Contains(caution, text, StringComparison.Ordinal));
        Assert.All(card.Stages.SelectMany(stage => stage.Steps), step => Assert.Contains(step.Name, text, StringComparison.Ordinal));
        Assert.All(card.Cues, cue => Assert.Contains(cue.Means, text, StringComparison.Ordinal));
    }
}
