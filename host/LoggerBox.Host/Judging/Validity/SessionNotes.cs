using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>What bears on a whole session: zero readings, oil, site, stall times, lost data.</summary>
public static class SessionNotes
{
    public const string OilCold = "oil-cold";

    public static IEnumerable<ValidityNote> Of(Evidence evidence, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return evidence.Sessions.SelectMany((session, i) => Zeros(session, unit).Select(note => note with { Text = Sentences.InRecording(i, evidence.Sessions.Count) + note.Text }))
            .Concat(Oil(evidence))
            .Concat(StallNotes.Of(evidence))
            .Concat(evidence.Sessions.SelectMany(Losses))
            .Concat(evidence.Sessions.SelectMany(GapNotes.Of))
            .Concat(GapNotes.OfHolds(evidence.Steps.All))
            .Concat(Site(evidence));
    }

    /// <summary>Mean of the oil temperatures that the recording carries, else what the work order says.</summary>
    public static double? OilCelsius(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var recorded = evidence.Sessions.SelectMany(s => s.Events).Where(e => e.Kind == EventKind.OilTemperature).Select(e => e.Value / 10.0).ToList();
        return recorded.Count > 0 ? recorded.Average() : evidence.Facts.OilCelsius;
    }

    private static IEnumerable<ValidityNote> Zeros(RecordedSession session, PressureUnit unit)
    {
        for (int channel = Channel.Main; channel < Channel.Count; channel++)
        {
            if (ZeroReading.Of(session, channel) is not { } zero)
            {
                continue;
            }

            string name = Words.ChannelName(channel);
            yield return new ValidityNote("zero-offset", ValidityEffect.Note, Step.Zero, Sentences.ZeroOffset(name, zero.Pascal, unit));
            if (zero.DriftPascal is { } drift && Math.Abs(drift) > 2 * zero.StandardErrorPascal && Words.Shows(drift, unit))
            {
                yield return new ValidityNote("zero-drift", ValidityEffect.Note, Step.Zero, Sentences.ZeroDrift(name, drift, unit));
            }
        }
    }

    private static IEnumerable<ValidityNote> Oil(Evidence evidence)
    {
        if (OilCelsius(evidence) is not { } oil)
        {
            yield return new ValidityNote("oil-temperature-unknown", ValidityEffect.Note, Step.None, Sentences.OilUnknown());
        }
        else if (OilWindow.IsCold(oil, evidence.Sheet.OilCelsius))
        {
            yield return new ValidityNote(OilCold, ValidityEffect.Note, Step.None, Sentences.OilCold(oil, OilWindow.Least(evidence.Sheet.OilCelsius)!.Value, evidence.Sheet.OilCelsius is not null));
        }
        else if (evidence.Sheet.OilCelsius is { } limit && limit.Max < oil)
        {
            yield return new ValidityNote("oil-hot", ValidityEffect.Note, Step.None, Sentences.OilHot(oil, limit.Max.Value));
        }
    }

    private static IEnumerable<ValidityNote> Losses(RecordedSession session)
    {
        if (session.End is null)
        {
            yield return new ValidityNote("session-cut", ValidityEffect.Note, Step.None, Sentences.SessionCut());
        }

        double lost = session.Dropouts.Sum(d => d.ToMicroseconds - d.FromMicroseconds) / 1e6;
        if (session.Dropouts.Count > 0)
        {
            yield return new ValidityNote("samples-lost", ValidityEffect.Note, Step.None, Sentences.SamplesLost(session.Dropouts.Count, lost));
        }
    }

    private static IEnumerable<ValidityNote> Site(Evidence evidence)
    {
        double loss = SiteAir.TorqueLoss(evidence.AltitudeMetres, evidence.AirCelsius);
        if (loss > 0.03)
        {
            yield return new ValidityNote("air-thin", ValidityEffect.Note, Step.None, Sentences.AirThin(loss, SiteAir.StallDrop(loss)));
        }
    }
}
