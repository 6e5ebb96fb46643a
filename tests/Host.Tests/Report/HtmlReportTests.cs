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
                "NOT RELEASED", "Open before a release: road-test.", "Rules 2026.1", SampleReport.Fingerprint, "logger 1234ABCD, session 7", "service manual", "Technician, date",
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
        Assert.Equal(["Hold speed, forward, 2003 rpm", "Engagement, forward, 1.07 s"], windows.Select(window => window.Groups[1].Value));
        Assert.Equal(["none", "1.4 2.2"], Regex.Matches(windows[0].Value, "stroke-dasharray=\"([^\"]*)\"").Select(dash => dash.Groups[1].Value));
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
    public void A_hold_is_shaded_in_the_recording_it_belongs_to()
    {
        Assert.Contains(">hold-F</text>", page, StringComparison.Ordinal);
        Assert.DoesNotContain(">stall-F</text>", page, StringComparison.Ordinal);
    }

    private static string[] ElementsOf(string markup) => [.. Regex.Matches(markup, "<(/?[a-z0-9]+)").Select(tag => tag.Groups[1].Value)];
}
