using System;
using System.Linq;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

public class CsvExportTests
{
    private readonly string[] lines = CsvExport.Render(SampleReport.Session(), "session 7\nof another\rday", PressureUnit.Psi).TrimEnd('\n').Split('\n');

    [Fact]
    public void The_title_is_a_comment_and_stays_on_one_line()
    {
        Assert.Equal("# session 7 of another day", lines[0]);
        Assert.Equal("time_s,rpm,main_psi,clutch_psi,converter_psi,gear,step", lines[1]);
    }

    [Fact]
    public void A_missing_reading_is_an_empty_cell()
    {
        // (4000 - 3200) / 12800 of 3447379 Pa is 215461 Pa.
        Assert.Equal("0.000000,700.0,31.249976,,,N,", lines[2]);
        Assert.Equal(3000 - 201, lines.Length - 2);
    }

    [Fact]
    public void Gear_and_step_hold_from_their_event_on()
    {
        string[] At(string second) => lines.Single(line => line.StartsWith(second + ",", StringComparison.Ordinal)).Split(',');
        Assert.Equal("N", At("9.980000")[5]);
        Assert.Equal("F", At("10.000000")[5]);
        Assert.Equal("hold-F", At("21.000000")[6]);
        Assert.Equal("", At("34.020000")[6]);
    }

    [Theory]
    [InlineData(PressureUnit.Psi)]
    [InlineData(PressureUnit.Kilopascal)]
    [InlineData(PressureUnit.Bar)]
    [InlineData(PressureUnit.KilogramForcePerSquareCentimetre)]
    public void A_count_is_told_apart_from_its_neighbours_in_every_unit(PressureUnit unit)
    {
        RecordedSession session = SampleReport.Session();
        string[] main = [.. CsvExport.Render(session, "t", unit).Split('\n').Skip(2).Where(line => line.Length > 0).Select(line => line.Split(',')[2]).Distinct()];
        Assert.Equal(session.Samples.Select(sample => sample.MainCounts).Distinct().Count(), main.Length);
    }

    [Fact]
    public void A_channel_that_is_not_connected_has_no_column()
    {
        RecordedSession session = SampleReport.Session();
        session.Header.Pressures[Channel.Clutch - 1].Kind = ChannelKind.None;
        Assert.Contains("\ntime_s,rpm,main_bar,converter_bar,gear,step\n", CsvExport.Render(session, "t", PressureUnit.Bar), StringComparison.Ordinal);
    }
}
