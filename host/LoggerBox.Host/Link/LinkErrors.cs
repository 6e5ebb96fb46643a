using System;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>What can go wrong on the line, each as a sentence with the port's name and the next thing to do.</summary>
internal static class LinkErrors
{
    public static UserErrorException NoSuchPort(string port) =>
        new($"There is no port {port}: plug the cable in, and look for its name with `loggerbox ports`.");

    public static UserErrorException MayNotOpen(string port) =>
        new($"Port {port} may not be opened: another program holds it, or this user has no right to it (on Linux, join the group that owns the device, often dialout); then try again.");

    public static UserErrorException NotAPort(string port, string reason) =>
        new($"{port} cannot be opened as a serial port ({reason.TrimEnd('.')}): look for the right name with `loggerbox ports`.");

    public static UserErrorException NobodyListens(string port, string reason) =>
        new($"Nothing can be reached at {port} ({reason.TrimEnd('.')}): start the virtual logger with `loggerbox simulate --tcp`, and use the port that it prints.");

    public static UserErrorException Cut(string port) =>
        new($"The line on {port} was cut: check plug and cable, then run the same command again; what had arrived is kept.");

    public static UserErrorException TakesNothing(string port, TimeSpan waited) =>
        new($"The line on {port} took nothing for {waited.TotalSeconds:0.#} s: check plug and cable, then run the same command again; what had arrived is kept.");

    public static UserErrorException Silent(string port, TimeSpan waited) =>
        new($"No logger answers on {port}: nothing came back within {waited.TotalSeconds:0.#} s; switch the logger on, check the cable, or try another port of `loggerbox ports`.");

    public static UserErrorException Noise(string port, long bytes) =>
        new($"What comes in on {port} is no logger's ({bytes} bytes, no whole frame among them): another device may be on this port, or the cable is bad; try another port of `loggerbox ports`.");

    public static UserErrorException NoAnswer(string port, MessageCode request) =>
        new($"The logger on {port} sends, but gives no answer to {Text(request)}: switch it off and on, then run the same command again.");

    /// <summary>What is wrong follows from what came meanwhile: nothing, noise, or other frames.</summary>
    public static UserErrorException Unanswered(FrameLine line, MessageCode request, TimeSpan waited, long bytesBefore, int framesBefore) =>
        line.BytesHeard == bytesBefore ? Silent(line.Port, waited)
        : line.FramesHeard == framesBefore ? Noise(line.Port, line.BytesHeard - bytesBefore)
        : NoAnswer(line.Port, request);

    public static UserErrorException OtherVersion(string port, int theirs) =>
        new($"The logger on {port} speaks link version {theirs}, this program version {LinkVersion.Current}: nothing was fetched; install the {(theirs > LinkVersion.Current ? "newer program" : "newer logger firmware")}.");

    public static UserErrorException OtherRecords(string port, int theirs, int ours) =>
        new($"The logger on {port} stores records of version {theirs}, this program reads version {ours}: nothing was fetched; install the {(theirs > ours ? "newer program" : "newer logger firmware")}.");

    public static UserErrorException Refused(string port, MessageCode request, RefusalReason reason) =>
        new($"The logger on {port} refused {Text(request)}: {Text(reason)}.");

    public static UserErrorException TooManySessions(string port, int claimed, int most) =>
        new($"The logger on {port} claims {claimed} sessions, more than any logger keeps ({most}): nothing was fetched; pull its card and keep it.");

    public static UserErrorException Stuck(string port, uint session, long missing) =>
        new($"Session {session} does not come through on {port}: {missing} bytes are missing and none of them arrives; check the cable, then run the same command again; what had arrived is kept.");

    private static string Text(MessageCode request) => request switch
    {
        MessageCode.Hello => "the greeting",
        MessageCode.List => "the list of sessions",
        MessageCode.Fetch => "to send a session",
        MessageCode.Confirm => "to compare a session",
        MessageCode.SendPlan => "the plan",
        MessageCode.SetClock => "the time",
        MessageCode.Watch => "the wish to watch",
        MessageCode.SendCalibration => "the calibration",
        MessageCode.GetCalibration => "the question for its calibration",
        _ => "a request",
    };

    private static string Text(RefusalReason reason) => reason switch
    {
        RefusalReason.UnknownRequest => "its firmware does not know the request; install the newer logger firmware",
        RefusalReason.Malformed => "it could not read the request; check that program and firmware are of the same release",
        RefusalReason.NoSuchSession => "it has no such session any more; run the same command again",
        RefusalReason.DoesNotAgree => "it holds other bytes; run the same command again",
        RefusalReason.Recording => "it is recording; end the session with the button, then run the same command again",
        RefusalReason.TooManyRequests => "too many requests wait there; run the same command again",
        RefusalReason.PlanSpeeds => "a speed of the plan is outside what any lift truck's engine does; check the speeds of the data sheet",
        RefusalReason.PlanStallTimes => "a time of the plan's stall clock is outside its limits (target 1 to 15 s, stop 2 to 30 s, cool-down 15 to 600 s); check [stall] of the data sheet",
        RefusalReason.PlanPressures => "a pressure of the plan is outside what the transducers measure; check the pressures and their unit in the data sheet",
        RefusalReason.PlanPickup => "the plan's pulses per revolution are outside 1/4 to 400; check [pickup] of the data sheet",
        RefusalReason.StoreFailed => "its card took no note of it; check the card",
        _ => $"it gives the reason {(int)reason}, which this program does not know; install the newer program",
    };
}
