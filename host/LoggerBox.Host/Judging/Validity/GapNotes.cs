using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>What is missing of a recording, where, and for how long: told, never bridged.</summary>
public static class GapNotes
{
    private const int MostTold = 8;

    public static IEnumerable<ValidityNote> Of(RecordedSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        foreach (SessionGap gap in session.Gaps.Take(MostTold))
        {
            yield return new ValidityNote("records-lost", ValidityEffect.Note, Step.None, GapWords.Of(gap, session));
        }

        if (session.Gaps.Count > MostTold)
        {
            yield return new ValidityNote("records-lost", ValidityEffect.Note, Step.None, Sentences.MorePlacesDamaged(session.Gaps.Count - MostTold));
        }
    }

    /// <summary>A hold is the logger's own finding and stands; but nobody can look at what it was found in.</summary>
    public static IEnumerable<ValidityNote> OfHolds(IEnumerable<MeasuredHold> holds)
    {
        ArgumentNullException.ThrowIfNull(holds);
        foreach (MeasuredHold hold in holds)
        {
            long start = hold.Record.StartMicroseconds;
            if (hold.Session.Gaps.Any(gap => gap.Cuts(start, start + (hold.Record.DurationMilliseconds * 1000L))))
            {
                yield return new ValidityNote("hold-without-samples", ValidityEffect.Note, hold.Step, Sentences.SamplesOfHoldLost(hold.Step));
            }
        }
    }
}
