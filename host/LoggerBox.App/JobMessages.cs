using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;

namespace LoggerBox.App;

/// <summary>What a user meets about the gates of a work order and its release.</summary>
internal static class JobMessages
{
    public const string GateVerb = "Tick gates of a work order, looked at with your own eyes, before and after the test; or take a tick back. Each is a new row.";
    public const string ByOption = "Who looked and answers for it.";
    public const string NoteOption = "What was seen; wanted for stands and oil-read.";
    public const string WithdrawOption = "The gates no longer hold; with `release`, the truck is no longer released.";
    public const string ReleasedByOption = "Who releases the truck; all closing gates must be ticked.";
    public const string NotReleasedOption = "Close the job without releasing the truck: every report of it says NOT RELEASED.";
    public const string ReleasedOrNot = "--released-by and --not-released contradict each other";

    public const string DemoNote = "invented, as truck and technician are";

    public static string GateArgument { get; } =
        $"Opening: {Codes(GateStage.Opening)}. Closing: {Codes(GateStage.Closing)}. With --withdraw also {Gate.ReleaseCode}.";

    public static string Ticked(Job job, IReadOnlyList<string> codes, bool withdrawn) =>
        $"Job {job.Id}: {string.Join(", ", codes)} {(withdrawn ? "withdrawn" : "ticked")}. {StillOpen(job.Release)}";

    public static string ClosedUnreleased(string id) => $"Job {id} is closed and NOT RELEASED: the truck stays out of work.";

    public static string Released(string id, string by) => $"Job {id} is closed; the truck is released by {by}.";

    public static string DemoNotReleased(string id) =>
        $"Job {id} is NOT RELEASED, as it should be: nothing was repaired or road tested. `loggerbox job show {id}` lists its gates.";

    private static string StillOpen(ReleaseState state)
    {
        if (state.Release is GateTick release)
        {
            return $"Released by {release.By}.";
        }

        string[] open = [.. state.Open(GateStage.Opening).Concat(state.Open(GateStage.Closing)).Select(gate => gate.Code)];
        return open.Length == 0 ? "No gate is open; not released yet." : $"Open: {string.Join(", ", open)}.";
    }

    private static string Codes(GateStage stage) => string.Join(", ", Gate.All.Where(gate => gate.Stage == stage).Select(gate => gate.Code));
}
