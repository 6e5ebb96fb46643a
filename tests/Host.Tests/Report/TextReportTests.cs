using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

public class TextReportTests
{
    [Fact]
    public void The_outcome_comes_first_then_the_suspects_with_evidence_and_next_check()
    {
        string text = Written(SampleReport.Judgement());
        int outcome = text.IndexOf("==> Suspect: forward clutch circuit leaks", StringComparison.Ordinal);
        int evidence = text.IndexOf("+ clutch pressure in forward is low", StringComparison.Ordinal);
        int next = text.IndexOf("next: Put shop air", StringComparison.Ordinal);
        int readings = text.IndexOf("READINGS", StringComparison.Ordinal);
        Assert.True(0 < outcome && outcome < evidence && evidence < next && next < readings, text);
    }

    [Fact]
    public void Readings_stand_in_columns_with_unit_limit_and_verdict()
    {
        string[] lines = Written(SampleReport.Judgement()).Split('\n');
        string low = Assert.Single(lines, line => line.Contains("▼ LOW", StringComparison.Ordinal));
        Assert.Equal("   clutch pressure        101.7   1.9  psi  131.0 to 180.0  ▼ LOW", low);
        string[] judged = [.. lines.Where(line => line.Contains(" to ", StringComparison.Ordinal) && line.Contains("psi", StringComparison.Ordinal))];
        Assert.True(judged.Length >= 3);
        Assert.Single(judged.Select(line => line.IndexOf("psi", StringComparison.Ordinal)).Distinct());
    }

    [Fact]
    public void No_line_is_wider_than_a_terminal_of_a_hundred_columns()
    {
        string spice = string.Concat(Enumerable.Repeat(" and more words", 20));
        Assert.All(Written(SampleReport.Judgement() with { Suspects = [new Suspect("pump-worn", 1, 1, [spice], [spice], spice)] }).Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void Colour_is_only_written_where_it_was_asked_for()
    {
        Assert.DoesNotContain('\e', Written(SampleReport.Judgement()));
        Assert.Contains('\e', Written(SampleReport.Judgement(), colour: true));
    }

    [Fact]
    public void Text_of_others_cannot_steer_the_terminal()
    {
        string text = Written(SampleReport.Judgement("\e[2J\a"));
        Assert.DoesNotContain('\e', text);
        Assert.DoesNotContain('\a', text);
    }

    [Fact]
    public void Nothing_suspected_and_a_step_missing_is_no_finding_of_health()
    {
        Judgement judgement = SampleReport.Judgement();
        var incomplete = new ValidityNote("incomplete", ValidityEffect.Note, Protocol.Rules.Step.StallForward, "stall missing");
        Check[] inside = [.. judgement.Checks.Where(check => check.Verdict == Verdict.In)];
        Assert.Contains("not complete", Outcome.Headline(judgement with { Suspects = [], Validity = [incomplete], Checks = inside }), StringComparison.Ordinal);
        Assert.Equal("What was measured is normal", Outcome.Headline(judgement with { Suspects = [], Validity = [], Checks = inside }));
        Check close = inside[0] with { Step = "hold-F", Quantity = "main", Verdict = Verdict.CloseLow };
        Assert.Equal("No suspect; too close to a limit to call: main pressure (hold speed, forward)", Outcome.Headline(judgement with { Suspects = [], Validity = [], Checks = [.. inside, close] }));
        Assert.Contains("Nothing was judged", Outcome.Headline(judgement with { Suspects = [], Validity = [], Checks = [] }), StringComparison.Ordinal);
        Assert.Contains("no known cause", Outcome.Headline(judgement with { Suspects = [], Validity = [] }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_truck_that_is_not_released_is_said_before_anything_else()
    {
        string text = Written(SampleReport.Document());
        Assert.InRange(text.IndexOf("\nNOT RELEASED\n    The job is open.", StringComparison.Ordinal), 1, text.IndexOf("==>", StringComparison.Ordinal));
        Assert.DoesNotContain("NOT RELEASED", Written(SampleReport.Document() with { Release = new ReleaseNote(true, "Released by C. Chief", "") }), StringComparison.Ordinal);
        string hostile = Written(SampleReport.Document("\e[2J\u202E"));
        Assert.DoesNotContain('\e', hostile);
        Assert.DoesNotContain('\u202E', hostile);
    }

    [Fact]
    public void Complaint_before_and_after_and_the_instrument_are_said_and_blanks_are_not()
    {
        string text = Written(SampleReport.Document());
        Assert.Matches(@"COMPLAINT, CAUSE, CORRECTION\n   Complaint +Slow on the ramp.*\n.*\n?   Correction +none yet\n", text);
        Assert.DoesNotContain("Cause found", text, StringComparison.Ordinal);
        Assert.Contains("CALIBRATION OVERDUE", text, StringComparison.Ordinal);
        Assert.Matches(@"Hold speed, forward: clutch pressure +88\.1 +101\.7 psi +\+13\.6 +2\.7 +changed +▼ LOW → ▼ LOW", text);
    }

    private static string Written(Judgement judgement, bool colour = false) => Written(SampleReport.Document() with { Judgement = judgement, Comparison = null }, colour);

    private static string Written(ReportDocument report, bool colour = false)
    {
        using var output = new StringWriter { NewLine = "\n" };
        new TextReport(output, colour).Write(report);
        return output.ToString();
    }
}
