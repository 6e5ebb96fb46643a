using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>A zero at the start alone: a transducer that got warm and moved meanwhile is not found out.</summary>
public static class ClosingZero
{
    public const string Code = "zero-once";

    public static IEnumerable<ValidityNote> Notes(Evidence evidence)
    {
        if (evidence.Sessions.Any(IsMissing))
        {
            yield return new ValidityNote(Code, ValidityEffect.Note, Step.Zero, Sentences.ZeroReadOnce());
        }
    }

    private static bool IsMissing(RecordedSession session)
    {
        ZeroReading[] zeros = [.. Enumerable.Range(Channel.Main, Channel.Count - Channel.Main).Select(channel => ZeroReading.Of(session, channel)).OfType<ZeroReading>()];
        return zeros.Length > 0 && zeros.All(zero => zero.DriftPascal is null);
    }
}
