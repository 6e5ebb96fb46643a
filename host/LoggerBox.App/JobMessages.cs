using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Report;

namespace LoggerBox.App;

/// <summary>What a user meets about the gates of a work order and its release.</summary>
internal static class JobMessages
{
    public const string GateVerb = "Tick gates of a work order, looked at with your own eyes, before and after the test; or take a tick back. Each is a new row.";
    public const string ByOption = "Who looked and answers for it.";
    public const string NoteOption = "What was seen; wanted for oil-read.";
    public const string WithdrawOption = "The gates no longer hold; with `release`, the truck is no longer released.";
    public const string ReleasedByOption = "Who releases the truck; all closing gates must be ticked.";
    public const string NotReleasedOption = "Close the job without releasing the truck: every report of it says NOT RELEASED.";
    public const string ReleasedOrNot = "--released-by and --not-released contradict each other";

    public const string CorrectVerb = "Put a work order right, also a closed one, or date a session. What was written stays; each correction is a new row with who and when.";
    public const string CorrectArgument = "Job id for what a work order says; session id (S1, ...) to date it.";
    public const string CorrectedByOption = "Who puts it right and answers for it.";
    public const string ReasonOption = "Why.";
    public const string RecordedOption = "When the session was recorded, 2026-03-02 14:20; the shop's own time where no offset (+01:00) is given.";

    public const string DemoNote = "invented, as truck and technician are";

    public static string GateArgument { get; } =
        $"Opening: {Codes(GateStage.Opening)}. At idle: {Codes(GateStage.Idle)}. Closing: {Codes(GateStage.Closing)}. With --withdraw also {Gate.ReleaseCode}.";

    public static string Ticked(Job job, IReadOnlyList<string> codes, bool withdrawn) =>
        $"Job {job.Id}: {string.Join(", ", codes)} {(withdrawn ? "withdrawn" : "ticked")}. {StillOpen(job.Release)}";

    public static string ClosedUnreleased(Job job) =>
        $"Job {job.Id} is closed and NOT RELEASED: the truck stays out of work. {NextForRelease(job)}";

    public static string Released(string id, string by) => $"Job {id} is closed; the truck is released by {by}.";

    public static string Corrected(string id, IEnumerable<(string Field, string Value)> fields, string by) =>
        $"Job {id}: {string.Join(", ", fields.Select(one => $"{one.Field} is \"{one.Value}\""))}. Corrected by {by}; what stood there is kept.";

    public static string OnlyDate(string id) => $"Of session {id} only the date can be put right: give it with --recorded, and name a job for what a work order says.";

    public static string OnlyFields(string id) =>
        $"Say what of job {id} is to be put right, with --truck, --serial, --hours, --complaint, --cause or --correction; --recorded is for a session (S1, S2, ...).";

    public static string NoMoment(string text) => $"'{PlainText.Of(text)}' is no date and time: write it as 2026-03-02 14:20, or with an offset, 2026-03-02T14:20+01:00.";

    public static string NothingWritten() =>
        "A work order without a truck, serial, complaint or data sheet tells nobody anything: give at least one of --truck, --serial, --complaint and --sheet.";

    public static string SuspectStands(Job job, string suspect) =>
        $"Job {job.Id} is not released: its test suspects that {suspect}, no correction is written, and nothing was measured after it. "
        + $"Write what was done, or why nothing, with --correction; and better test it again, `loggerbox job add {job.Id} SESSION --as after`."
        + (job.Release.Open(GateStage.Closing).Count > 0 ? " " + NextForRelease(job) : "");

    public static string DemoNotReleased(string id) =>
        $"Job {id} is NOT RELEASED, as it should be: nothing was repaired or road tested. `loggerbox job show {id}` lists its gates.";

    private static string NextForRelease(Job job)
    {
        string[] open = [.. job.Release.Open(GateStage.Closing).Select(gate => gate.Code)];
        string release = $"release it with `loggerbox job close {job.Id} --released-by NAME`.";
        return open.Length == 0
            ? "No closing gate is open: when it may work again, " + release
            : $"Open before it may work again: {string.Join(", ", open)}. Look at each at the truck, tick them with `loggerbox job gate {job.Id} {string.Join(' ', open)} --by NAME`, then {release}";
    }

    private static string StillOpen(ReleaseState state)
    {
        if (state.Release is GateTick release)
        {
            return $"Released by {release.By}.";
        }

        string[] open = [.. Enum.GetValues<GateStage>().SelectMany(state.Open).Select(gate => gate.Code)];
        return open.Length == 0 ? "No gate is open; not released yet." : $"Open: {string.Join(", ", open)}.";
    }

    private static string Codes(GateStage stage) => string.Join(", ", Gate.All.Where(gate => gate.Stage == stage).Select(gate => gate.Code));
}
