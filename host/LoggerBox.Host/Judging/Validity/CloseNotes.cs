using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>Readings so close to a limit that their uncertainty decides nothing: one more try costs a minute, a wrong conclusion a transmission.</summary>
public static class CloseNotes
{
    public const string Code = "borderline";

    /// <param name="checks">In the unit in which they are shown.</param>
    /// <param name="mayStall">False: nobody is sent into another stall.</param>
    public static IEnumerable<ValidityNote> Of(IReadOnlyList<Check> checks, bool mayStall)
    {
        ArgumentNullException.ThrowIfNull(checks);
        return checks
            .Where(check => check.Verdict is Verdict.CloseLow or Verdict.CloseHigh)
            .GroupBy(check => check.Step)
            .Select(step => new ValidityNote(Code, ValidityEffect.Note, StepOf(step.Key), Sentences.TooCloseToCall([.. step], mayStall || !HoldGates.IsStall(StepOf(step.Key)))));
    }

    private static Step StepOf(string code) => code switch
    {
        "engage-F" => Step.IdleForward,
        "engage-R" => Step.IdleReverse,
        "engage" => Step.IdleInGear,
        _ => StepCodes.TryParse(code, out Step step) ? step : Step.None,
    };
}
