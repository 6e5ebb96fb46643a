using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

public sealed class FirstChecks
{
    [Fact]
    public void Of_suspects_that_cannot_be_told_apart_each_check_is_named_once()
    {
        Suspect Of(string code, int rank, string next) => new(code, rank, 0.5, [], [], next);
        Judgement judgement = SampleReport.Judgement() with
        {
            Suspects = [Of("governor-low", 1, "See the stop."), Of("engine-power-low", 1, "Take the cleaner off."), Of("work-relief-low", 1, "See the stop."), Of("pump-worn", 2, "Measure the flow.")],
        };
        Assert.Contains("Do first: See the stop. Then: Take the cleaner off.", ReportWords.Outcome(judgement).Lines);
    }

    [Fact]
    public void The_instruments_error_is_said_in_the_reports_unit()
    {
        ReportDocument report = SampleReport.Document();
        Assert.Contains("stated error of the pressures up to 1.2 psi", ReportWords.Instrument(report.Recordings[0], report.Judgement.Unit), System.StringComparison.Ordinal);
    }
}
