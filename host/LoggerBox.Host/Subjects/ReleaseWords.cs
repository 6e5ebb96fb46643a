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
        string skipped = $"{Unmeasured(job)} {Skipped(job)}".Trim();
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

    public static string Of(GateStage stage) => stage switch
    {
        GateStage.Opening => "Before the engine is started",
        GateStage.Idle => "At idle, before the test that needs it",
        _ => "Before the truck goes back to work",
    };

    /// <summary>Who ticked it and when; what has to be written with it where it is open.</summary>
    public static string Of(Job job, GateState state)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(state);
        if (state.Tick is not GateTick tick)
        {
            return state.Gate.NoteWanted.Length == 0 ? "" : $"note: {state.Gate.NoteWanted}";
        }

        string late = IsAfterwards(job, state) ? ", after the test" : "";
        return $"{tick.By}, {JobWords.Moment(tick.Made)}{late}{(tick.Note.Length == 0 ? "" : ": " + tick.Note)}";
    }

    private static string Why(Job job)
    {
        IReadOnlyList<Gate> open = job.Release.Open(GateStage.Closing);
        string missing = open.Count == 0 ? "Nobody has released the truck." : $"Open before a release: {Names(open)}.";
        return $"{(job.Closed is DateTimeOffset closed ? $"Closed {JobWords.Moment(closed)} without a release." : "The job is open.")} {missing}";
    }

    /// <summary>What was not looked at before the test cannot be looked at after it: the reader is told, whoever ticks it then.</summary>
    private static string Skipped(Job job)
    {
        Gate[] open = [.. job.Release.Open(GateStage.Opening), .. job.Release.Open(GateStage.Idle)];
        Gate[] late = [.. job.Release.Gates.Where(state => IsAfterwards(job, state)).Select(state => state.Gate)];
        string skipped = open.Length == 0 ? "" : $"Not ticked before the test: {Names(open)}.";
        return late.Length == 0 ? skipped : $"{skipped} Ticked after the test, not before it: {Names(late)}.".TrimStart();
    }

    /// <summary>
    /// No tick of it is from before the first session's start; what is looked at with the engine running may follow that, but not the session's
    /// arrival.
    /// </summary>
    private static bool IsAfterwards(Job job, GateState state)
    {
        if (state.Tick is null || state.Gate.Stage == GateStage.Closing || job.Test is not TestMoments test)
        {
            return false;
        }

        DateTimeOffset latest = state.Gate.Stage == GateStage.Opening ? test.Began : test.Arrived;
        return job.Gates.Where(tick => tick.Gate == state.Gate.Code && !tick.Withdrawn).All(tick => tick.Made > latest);
    }

    /// <summary>A repair that nobody measured: whoever reads "released" beside a suspect must know that it is of before.</summary>
    private static string Unmeasured(Job job) => JobWords.IsCorrectedUnmeasured(job) ? "Nothing was measured after the correction." : "";

    private static string Names(IEnumerable<Gate> gates) => string.Join(", ", gates.Select(gate => gate.Name));
}
