using System;
using System.Linq;
using System.Text.RegularExpressions;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

public class HtmlReportTests
{
    private const string Hostile = "<script>alert(1)</script>\"'><img src=x onerror=y>&amp;";

    private readonly string page = HtmlReport.Render(SampleReport.Document());

    [Fact]
    public void A_page_loads_nothing_and_forbids_loading()
    {
        Assert.Contains("content=\"default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;\"", page, StringComparison.Ordinal);
        foreach (string door in (string[])["http:", "https:", "src=", "href=", "url(", "@import", "<script", "<link", "<iframe"])
        {
            Assert.DoesNotContain(door, page, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Whatever_anyone_wrote_becomes_text_and_never_markup()
    {
        string hostile = HtmlReport.Render(SampleReport.Document(Hostile));
        Assert.DoesNotContain("<script", hostile, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", hostile, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(ElementsOf(page), ElementsOf(hostile));
        Assert.True(Regex.Count(hostile, Regex.Escape("&lt;script&gt;alert(1)&lt;/script&gt;")) >= 14);
    }

    [Fact]
    public void Every_element_that_is_opened_is_closed_in_order()
    {
        var open = new System.Collections.Generic.Stack<string>();
        foreach (Match tag in Regex.Matches(page, "<(/?)([a-z0-9]+)[^>]*>"))
        {
            string name = tag.Groups[2].Value;
            if (name == "meta")
            {
                continue;
            }

            if (tag.Groups[1].Length == 0)
            {
                open.Push(name);
            }
            else
            {
                Assert.Equal(open.Pop(), name);
            }
        }

        Assert.Empty(open);
    }

    [Fact]
    public void A_verdict_stands_as_word_and_symbol()
    {
        foreach (string verdict in (string[])["✓ in limits", "▼ LOW", "▲ HIGH", "▽ at the lower limit", "△ at the upper limit", "– not measured", "✕ void"])
        {
            Assert.Contains(verdict, System.Net.WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Header_evidence_next_check_fingerprint_and_gaps_of_the_test_are_printed()
    {
        string text = System.Net.WebUtility.HtmlDecode(page);
        foreach (string part in (string[])
            [
                "Sample truck", "SN-0042", "4211 h", "Slow on the ramp", "sample.toml — invented figures", "2026-09-21 17:13 (UTC+02:00; 2026-09-21 15:13 UTC)",
                "clutch pressure in forward is low", "main pressure at idle is normal", "Put shop air", "outside 1925 to 2075", "Free-roll the truck",
                "NOT RELEASED", "Open before a release: road test.", "Rules 2026.1", SampleReport.Fingerprint, "logger 1234ABCD, session 7", "service manual", "Technician, date",
            ])
        {
            Assert.Contains(part, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_recording_without_a_clock_is_undated_and_not_of_1970()
    {
        ReportRecording dated = SampleReport.Document().Recordings[0];
        Assert.Equal("2026-09-21 16:13 (UTC+02:00; 2026-09-21 14:13 UTC)", ReportWords.Started(dated));
        Assert.Equal("undated: the logger's clock was not set", ReportWords.Started(dated with { StartedUtc = null }));
    }

    [Fact]
    public void A_hole_in_the_recording_stays_a_hole_in_the_curve_and_an_unconnected_channel_is_said()
    {
        string speed = Regex.Match(page, "aria-label=\"engine speed, rpm\".*?<path d=\"([^\"]*)\"", RegexOptions.Singleline).Groups[1].Value;
        Assert.Equal(2, speed.Count(letter => letter == 'M'));
        Assert.Contains("No clutch pressure was recorded.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_hold_and_engagement_has_a_window_with_lines_that_need_no_colour()
    {
        MatchCollection windows = Regex.Matches(page, "<svg[^>]*aria-label=\"([^\"]*): pressures, psi\".*?</svg>", RegexOptions.Singleline);
        Assert.Equal(["1  Hold speed, forward, 2003 rpm", "Engagement, forward, 1.07 s"], windows.Select(window => window.Groups[1].Value));
        Assert.Equal(["none", "1.4 2.2"], Regex.Matches(windows[0].Value, "class=\"curve\"[^>]*stroke-dasharray=\"([^\"]*)\"").Select(dash => dash.Groups[1].Value));
    }

    [Fact]
    public void The_first_page_is_the_customers_and_the_rest_for_the_file()
    {
        string text = System.Net.WebUtility.HtmlDecode(page);
        int At(string part) => text.IndexOf(part, StringComparison.Ordinal) is >= 0 and int at ? at : throw new Xunit.Sdk.XunitException(part);
        int end = At("</section>");
        foreach (string part in (string[])["NOT RELEASED", "Do first:", "Slow on the ramp", "Correction", "SN-0042", "CALIBRATION OVERDUE", "▼ LOW → ▼ LOW", SampleReport.Fingerprint, "Customer, date"])
        {
            Assert.InRange(At(part), 0, end);
        }

        Assert.True(end < At(">Readings<") && At(">Readings<") < At("Recording session 7") && At("Recording session 7") < At("Suspects and what to do next") && At("Suspects and what to do next") < At("Not covered by this test"));
        Assert.Contains(".front { break-after:page;", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hold_is_numbered_in_the_recording_it_belongs_to()
    {
        Assert.Contains(">1</text>", page, StringComparison.Ordinal);
        Assert.Contains("<p class=\"small\">1 Hold speed, forward</p>", page, StringComparison.Ordinal);
        Assert.DoesNotContain(">2</text>", page, StringComparison.Ordinal);
    }

    /// <summary>Holds that follow each other within a second, as full pedal and relief do: none goes without its number, and no number lies on another.</summary>
    [Fact]
    public void Every_hold_has_its_number_over_the_curves_in_the_key_and_over_its_window()
    {
        string crowded = HtmlReport.Render(SampleReport.Crowded());
        string[] steps = ["Idle, neutral", "Idle, forward", "Idle, reverse", "Full pedal, no load", "Full pedal, work relief", "Stall, forward", "Stall, reverse", "Hold speed, neutral"];
        Assert.Contains(string.Join(" · ", steps.Select((step, i) => $"{i + 1} {step}")), System.Net.WebUtility.HtmlDecode(crowded), StringComparison.Ordinal);
        string speed = Regex.Match(crowded, "aria-label=\"engine speed, rpm\".*?</svg>", RegexOptions.Singleline).Value;
        var labels = Regex.Matches(speed, "<text x=\"([0-9.]+)\" y=\"([0-9.]+)\" text-anchor=\"middle\" fill=\"#14181c\"[^>]*>([0-9]+)</text>")
            .Select(match => (X: double.Parse(match.Groups[1].Value), Y: double.Parse(match.Groups[2].Value), Number: int.Parse(match.Groups[3].Value))).ToArray();
        Assert.Equal(Enumerable.Range(1, steps.Length), labels.Select(label => label.Number));
        foreach (var (x, y, number) in labels)
        {
            Assert.DoesNotContain(labels, other => other.Number != number && Math.Abs(other.X - x) < 10 && Math.Abs(other.Y - y) < 8);
        }

        Assert.Equal(steps.Select((step, i) => $"{i + 1}  {step}"), Regex.Matches(crowded, "aria-label=\"([0-9]+  [^\"]*?), [0-9]+ rpm: pressures").Select(title => title.Groups[1].Value));
    }

    /// <summary>The line stays below what the samples around it reach; that something was left out is marked.</summary>
    [Fact]
    public void A_single_wild_reading_is_no_part_of_the_line_and_is_marked()
    {
        string Line(string svg) => Regex.Match(svg, "<path d=\"([^\"]*)\"").Groups[1].Value;
        string Speed(string report) => Regex.Match(report, "aria-label=\"engine speed, rpm\".*?</svg>", RegexOptions.Singleline).Value;
        string wild = HtmlReport.Render(SampleReport.With(SampleReport.Session(wildAt: 500)));
        double Highest(string svg) => Regex.Matches(Line(svg), "[LMV](?:[0-9.]+ )?([0-9.]+)").Min(point => double.Parse(point.Groups[1].Value));
        Assert.Equal(Highest(Speed(page)), Highest(Speed(wild)), 1);
        Assert.DoesNotContain("class=\"lone\"", Speed(page), StringComparison.Ordinal);
        Assert.Equal(1, Regex.Count(Regex.Match(Speed(wild), "class=\"lone\" d=\"([^\"]*)\"").Groups[1].Value, "M"));
        Assert.Contains("left out of the line as of every value", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_window_shows_the_limits_in_the_dashes_of_their_pressure_and_the_speed()
    {
        string window = Regex.Match(page, "<svg[^>]*aria-label=\"1  Hold speed, forward.*?</svg>", RegexOptions.Singleline).Value;
        Assert.Equal(["none", "none", "2.8 4.4"], Regex.Matches(window, "class=\"limit\"[^>]*stroke-dasharray=\"([^\"]*)\"").Select(dash => dash.Groups[1].Value));
        Assert.Contains("class=\"speed\"", window, StringComparison.Ordinal);
    }

    /// <summary>One accent, and none is needed: what is grey on paper is grey on the screen.</summary>
    [Fact]
    public void It_is_drawn_in_ink_and_greys()
    {
        foreach (Match colour in Regex.Matches(System.Net.WebUtility.HtmlDecode(page), "#([0-9a-f]{6}|[0-9a-f]{3})\\b"))
        {
            string digits = colour.Groups[1].Value;
            int[] parts = digits.Length == 3 ? [.. digits.Select(digit => 17 * Convert.ToInt32($"{digit}", 16))] : [.. digits.Chunk(2).Select(pair => Convert.ToInt32(new string(pair), 16))];
            Assert.True(parts.Max() - parts.Min() <= 16, colour.Value);
        }
    }

    [Fact]
    public void What_is_outside_a_limit_stands_on_the_first_page_and_a_long_story_in_full_at_the_end()
    {
        string story = string.Join(' ', Enumerable.Repeat("weak", 399));
        ReportDocument report = SampleReport.Document() with { Comparison = null, Front = [new ReportSection("Complaint", [new ReportFact("Complaint", story)])] };
        string text = System.Net.WebUtility.HtmlDecode(HtmlReport.Render(report));
        string front = text[..text.IndexOf("</section>", StringComparison.Ordinal)];
        Assert.Contains("Hold speed, forward: clutch pressure", front, StringComparison.Ordinal);
        Assert.Contains("limit 131.0 to 180.0", front, StringComparison.Ordinal);
        Assert.Contains("(in full at the end)", front, StringComparison.Ordinal);
        Assert.DoesNotContain(story, front, StringComparison.Ordinal);
        Assert.Contains("Complaint, in full</h2>\n<p class=\"story\">" + story, text, StringComparison.Ordinal);
    }

    private static string[] ElementsOf(string markup) => [.. Regex.Matches(markup, "<(/?[a-z0-9]+)").Select(tag => tag.Groups[1].Value)];
}
