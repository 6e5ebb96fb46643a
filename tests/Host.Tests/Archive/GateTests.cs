using System;
using System.Data.Common;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Tests.Archive.Places;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>Gates of a work order and the release of the truck. What a gate asks for is common practice of the trade, from memory.</summary>
public abstract class GateTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(-7));
    private static readonly string[] Closing = [.. Gate.All.Where(gate => gate.Stage == GateStage.Closing).Select(gate => gate.Code)];

    private readonly ArchiveFile archive;

    protected GateTests(ArchivePlace place)
        : base(place)
    {
        archive = place.Open();
        archive.Jobs.Create(new JobDetails(Truck: "Sample truck"), Now);
    }

    private Job Job => archive.Jobs.Load("J1");

    protected override void Close() => archive.Dispose();

    [StoreFact]
    public void A_tick_comes_back_with_who_when_and_what_was_seen()
    {
        archive.Gates.Tick("j1", ["stands", "chocks"], " A. Fitter ", "on stands\nfront axle", Now);

        GateState stands = Job.Release.Gates.Single(state => state.Gate.Code == "stands");
        Assert.Equal(new GateTick("stands", false, "A. Fitter", "on stands\nfront axle", Now), stands.Tick);
        Assert.Equal(TimeSpan.FromHours(-7), stands.Tick!.Made.Offset);
        Assert.DoesNotContain("chocks", Job.Release.Open(GateStage.Opening).Select(gate => gate.Code));
        Assert.Contains("oil-read", Job.Release.Open(GateStage.Idle).Select(gate => gate.Code));
        Assert.Equal(Closing, Job.Release.Open(GateStage.Closing).Select(gate => gate.Code));
    }

    [StoreFact]
    public void A_withdrawal_is_a_row_after_the_tick_and_opens_the_gate_again()
    {
        archive.Gates.Tick("J1", ["chocks"], "A. Fitter", "", Now);
        archive.Gates.Withdraw("J1", ["chocks"], "B. Smith", "chock slipped", Now.AddMinutes(5));

        Assert.Equal([(false, "A. Fitter"), (true, "B. Smith")], Job.Gates.Select(tick => (tick.Withdrawn, tick.By)));
        Assert.Contains("chocks", Job.Release.Open(GateStage.Opening).Select(gate => gate.Code));
        Assert.Contains("nothing to withdraw", Refusal(() => archive.Gates.Withdraw("J1", ["chocks"], "B. Smith", "", Now)), StringComparison.Ordinal);
    }

    [StoreFact]
    public void A_row_is_neither_changed_nor_removed()
    {
        archive.Gates.Tick("J1", ["chocks"], "A. Fitter", "", Now);
        foreach (string change in (string[])["UPDATE job_gates SET by_whom = 'nobody'", "DELETE FROM job_gates"])
        {
            Assert.Contains("by a new row", Assert.ThrowsAny<DbException>(() => Place.Execute("archive", change)).Message, StringComparison.Ordinal);
        }
    }

    [StoreFact]
    public void One_gate_that_is_refused_and_none_is_ticked()
    {
        Assert.Contains("'chalks' is no gate", Refusal(() => archive.Gates.Tick("J1", ["chocks", "chalks"], "A. Fitter", "", Now)), StringComparison.Ordinal);
        Assert.Contains("how they were read", Refusal(() => archive.Gates.Tick("J1", ["chocks", "oil-read"], "A. Fitter", "  ", Now)), StringComparison.Ordinal);
        Assert.Contains("--released-by", Refusal(() => archive.Gates.Tick("J1", ["chocks", "release"], "A. Fitter", "", Now)), StringComparison.Ordinal);
        Assert.Contains("name", Refusal(() => archive.Gates.Tick("J1", ["chocks"], "  ", "", Now)), StringComparison.Ordinal);
        Assert.Contains("longer than", Refusal(() => archive.Gates.Tick("J1", ["chocks"], "A. Fitter\0", "", Now)), StringComparison.Ordinal);
        Assert.Contains("longer than", Refusal(() => archive.Gates.Tick("J1", ["chocks"], "A. Fitter", new string('x', 2001), Now)), StringComparison.Ordinal);
        Assert.Empty(Job.Gates);
    }

    [StoreFact]
    public void With_one_closing_gate_open_nobody_releases_the_truck()
    {
        archive.Gates.Tick("J1", Closing[1..], "A. Fitter", "", Now);

        string refusal = Refusal(() => archive.Jobs.Release("J1", "C. Chief", Now));

        Assert.Contains("a closing gate is open: zero-again.", refusal, StringComparison.Ordinal);
        Assert.Contains("loggerbox job gate J1 zero-again --by NAME", refusal, StringComparison.Ordinal);
        Assert.Null(Job.Closed);
        Assert.Equal("NOT RELEASED", ReleaseWords.Of(Job).Headline);
    }

    [StoreFact]
    public void A_release_names_who_gave_it_and_ends_ticking()
    {
        archive.Gates.Tick("J1", Closing, "A. Fitter", "", Now);
        Assert.Contains("nobody who releases", Refusal(() => archive.Jobs.Release("J1", null, Now)), StringComparison.Ordinal);
        archive.Jobs.Release("J1", "C. Chief", Now.AddHours(1), "pump worn", "pump replaced");

        Assert.Equal(("C. Chief", Now.AddHours(1)), (Job.Release.Release!.By, Job.Release.Release.Made));
        Assert.Equal(("pump worn", "pump replaced", Now.AddHours(1)), (Job.Cause, Job.Correction, Job.Closed));
        Assert.Contains("was released by C. Chief", Refusal(() => archive.Gates.Tick("J1", ["chocks"], "A. Fitter", "", Now)), StringComparison.Ordinal);
        Assert.Contains("was released by C. Chief", Refusal(() => archive.Jobs.Release("J1", "D. Other", Now)), StringComparison.Ordinal);
    }

    [StoreTheory]
    [InlineData("release")]
    [InlineData("plugs-dry")]
    public void Who_takes_back_what_a_release_rests_on_takes_back_the_release(string code)
    {
        archive.Gates.Tick("J1", Closing, "A. Fitter", "", Now);
        archive.Jobs.Release("J1", "C. Chief", Now);
        archive.Gates.Withdraw("J1", [code], "A. Fitter", "drips", Now.AddHours(2));

        Assert.False(Job.Release.IsReleased);
        Assert.Equal(Now, Job.Closed);
        if (code != Gate.ReleaseCode)
        {
            archive.Gates.Tick("J1", [code], "A. Fitter", "tightened", Now.AddHours(3));
            Assert.False(Job.Release.IsReleased);
        }

        archive.Jobs.Release("J1", "C. Chief", Now.AddHours(4));
        Assert.Equal(Now.AddHours(4), Job.Release.Release!.Made);
        Assert.Equal(Now, Job.Closed);
    }

    [StoreFact]
    public void A_job_that_is_closed_without_a_release_says_so_and_can_be_released_later()
    {
        archive.Jobs.Close("J1", Now, "customer took it away");
        Assert.Equal("Closed 2026-03-02 09:30 -07:00 without a release. Open before a release: zero read again, test ports plugged and dry, oil level after the test, chocks and stands away, road test. "
            + "Not ticked before the test: wheels chocked, parking brake on and controls in neutral, place clear in front and behind, ventilation, hoses dry at idle, oil level and temperature, rated stands for holds in gear, truck down for stalls.", ReleaseWords.Of(Job).Detail);

        archive.Gates.Tick("J1", Closing, "A. Fitter", "", Now.AddDays(1));
        archive.Jobs.Release("J1", "C. Chief", Now.AddDays(1));
        Assert.True(Job.Release.IsReleased);
        Assert.Equal("Released by C. Chief, 2026-03-03 09:30 -07:00", ReleaseWords.Of(Job).Headline);
    }

    private static string Refusal(Action act) => Assert.Throws<UserErrorException>(act).Message;
}

public sealed class GateTestsInSqlite() : GateTests(new SqlitePlace());

[InPostgres]
public sealed class GateTestsInPostgres() : GateTests(new PostgresPlace());
