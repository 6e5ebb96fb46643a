using System;
using System.Collections.Generic;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>Engagements that are not judged as they are: only a part was seen, and that was too long already; or the engine ran too fast.</summary>
public static class EngagementNotes
{
    public static IEnumerable<ValidityNote> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        foreach (var (gear, idle) in ((Gear, Step)[])[(Gear.Forward, Step.IdleForward), (Gear.Reverse, Step.IdleReverse)])
        {
            if (EngagementReadings.CutOff(evidence.Sessions, gear, evidence.Sheet.EngagementSeconds?.Max) is EngagementRecord cut)
            {
                yield return new ValidityNote("engagement-cut", ValidityEffect.Note, idle, Sentences.EngagementCut(gear, cut.TotalMilliseconds / 1000.0));
            }

            if (EngagementReadings.AboveIdle(evidence.Sessions, gear) is { } rpm)
            {
                yield return new ValidityNote("engagement-above-idle", ValidityEffect.Note, idle, Sentences.EngagementAboveIdle(gear, rpm));
            }
        }
    }
}
