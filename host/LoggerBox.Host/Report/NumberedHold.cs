using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Report;

/// <summary>A hold of a recording with the number by which the reader finds it in the curves, in the key and in the windows.</summary>
internal sealed record NumberedHold(int Number, JudgedHold Hold)
{
    public double From => Hold.StartSeconds;

    public double To => Hold.StartSeconds + Hold.DurationSeconds;

    /// <summary>The holds that count, in the order of the recording, from 1 on.</summary>
    public static IReadOnlyList<NumberedHold> Of(RecordedSession session, Judgement judgement) =>
        [.. RecordingHolds.Of(session, judgement).OrderBy(hold => hold.StartSeconds).Select((hold, index) => new NumberedHold(index + 1, hold))];

    /// <summary>"1 Engine off, no pressure · 2 Idle, neutral".</summary>
    public static string Key(IEnumerable<NumberedHold> holds) => string.Join(" · ", holds.Select(hold => FormattableString.Invariant($"{hold.Number} {StepWords.Of(hold.Hold.Step)}")));

    /// <summary>Where each number stands over its hold, and in which row, so that none touches another: the lowest row that is free.</summary>
    /// <param name="x">Place of a second.</param>
    /// <param name="width">Of a number.</param>
    public static IEnumerable<(int Number, double Middle, int Row)> Places(IReadOnlyList<NumberedHold> holds, Func<double, double> x, double width)
    {
        List<double> free = [];
        foreach (NumberedHold hold in holds)
        {
            double middle = (x(hold.From) + x(hold.To)) / 2;
            int row = free.FindIndex(until => middle - (width / 2) >= until);
            if (row < 0)
            {
                row = free.Count;
                free.Add(0);
            }

            free[row] = middle + (width / 2);
            yield return (hold.Number, middle, row);
        }
    }
}
