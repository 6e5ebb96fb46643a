using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.Releasing;

/// <summary>Why a gate is not ticked or a truck not released, each as a sentence; nothing was written then.</summary>
internal static class GateErrors
{
    public static UserErrorException Unknown(string code) =>
        new($"'{Excerpt.Of(code)}' is no gate: nothing was written; known are {string.Join(", ", Gate.All.Select(gate => gate.Code))}.");

    public static UserErrorException GivenByClosing(string job) =>
        new($"A release is given by closing the job: `loggerbox job close {job} --released-by NAME`. Nothing was written.");

    public static UserErrorException NoteWanted(Gate gate) =>
        new($"Gate {gate.Code} wants a note ({gate.NoteWanted}): nothing was written; add it with --note, or in the page's note.");

    public static UserErrorException NotStanding(string job, string code) =>
        new($"Gate {code} of job {job} is not ticked, so there is nothing to withdraw: `loggerbox job show {job}` shows its gates.");

    public static UserErrorException Released(string job, string by) =>
        new($"Job {job} was released by {by}: its gates are not ticked any more. Withdraw the release first, with `loggerbox job gate {job} {Gate.ReleaseCode} --withdraw --by NAME`.");

    public static UserErrorException NotUnreleased(string job, string by) => new(
        $"Job {job} is closed, and its truck was released by {by}: nothing was changed. To stop the truck, withdraw the release with `loggerbox job gate {job} {Gate.ReleaseCode} --withdraw --by NAME`.");

    public static UserErrorException NoName() => new("A gate needs the name of who answers for it: nothing was written.");

    public static UserErrorException NoText(string what, int most) =>
        new($"The {what} is longer than {most} signs, or holds one that is no text: nothing was written; write it shorter, without control characters.");

    public static UserErrorException CannotRelease(string job, IReadOnlyList<Gate> open) => new(
        $"Job {job} cannot be released, {(open.Count == 1 ? "a closing gate is" : $"{open.Count} closing gates are")} open: {string.Join(", ", open.Select(gate => gate.Code))}. "
        + $"Look at each at the truck, then `loggerbox job gate {job} {string.Join(' ', open.Select(gate => gate.Code))} --by NAME`; or close it unreleased with --not-released.");

    public static UserErrorException NobodyReleases(string job) =>
        new($"Job {job} has all closing gates, and nobody who releases the truck: close it with --released-by NAME, or unreleased with --not-released.");
}
