using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>An engine that was turned and did not run: its speed is a finding, the pressures of a pump that hardly turns are none.</summary>
public static class CrankedNotes
{
    public const string Code = "engine-cranked";

    public static IEnumerable<ValidityNote> Of(StepReadings steps) => steps.All
        .Where(hold => hold.IsCranked && hold.Step is not (Step.None or Step.Zero) && steps.Counts(hold))
        .DistinctBy(hold => hold.Step)
        .Select(hold => new ValidityNote(Code, ValidityEffect.Void, hold.Step, Sentences.EngineCranked(hold.Step, hold.Rpm!.Value)));
}
