using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Subjects;

/// <summary>What a job's gates come to, in words.</summary>
public static class ReleaseWords
{
    public static ReleaseNote Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        string skipped = Skipped(job.Release);
        return job.Release.Release is GateTick release
            ? new ReleaseNote(true, $"Released by {release.By}, {JobWords.Moment(release.Made)}", skipped)
            : new ReleaseNote(false, ReleaseNote.NotReleased, $"{Why(job)} {skipped}".TrimEnd());
    }

    /// <summary>In a list.</summary>
    public static string State(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return job.Release.IsReleased ? "released" : job.Closed is null ? "open" : "closed, " + ReleaseNote.NotReleased;
    }

    public static string Of(GateStage stage) => stage == GateStage.Opening ? "Before the engine is started" : "Before the truck goes back to work";

    /// <summary>Who ticked it and when; what has to be written with it where it is open.</summary>
    public static string Of(GateState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Tick is not GateTick tick)
        {
            return state.Gate.NoteWanted.Length == 0 ? "" : $"note: {state.Gate.NoteWanted}";
        }

        return $"{tick.By}, {JobWords.Moment(tick.Made)}{(tick.Note.Length == 0 ? "" : ": " + tick.Note)}";
    }

    private static string Why(Job job)
    {
        IReadOnlyList<Gate> open = job.Release.Open(GateStage.Closing);
        string missing = open.Count == 0 ? "Nobody has released the truck." : $"Open before a release: {Codes(open)}.";
        return $"{(job.Closed is DateTimeOffset closed ? $"Closed {JobWords.Moment(closed)} without a release." : "The job is open.")} {missing}";
    }

    /// <summary>What was not ticked before the test cannot be ticked after it: the reader is told.</summary>
    private static string Skipped(ReleaseState state)
    {
        IReadOnlyList<Gate> open = state.Open(GateStage.Opening);
        return open.Count == 0 ? "" : $"Not ticked before the test: {Codes(open)}.";
    }

    private static string Codes(IEnumerable<Gate> gates) => string.Join(", ", gates.Select(gate => gate.Code));
}
