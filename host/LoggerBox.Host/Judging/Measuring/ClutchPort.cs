using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// Where each clutch has a port of its own, one hose sees one gear at a time and is moved between them with the engine off: no pressure in the
/// other gear is no reading, neither a leak nor a drive that was cut, and what little stands there is no engagement.
/// </summary>
public static class ClutchPort
{
    /// <summary>Of main: what a drained clutch still holds at idle, where main is low. Common practice, no source.</summary>
    private const double Residual = 0.3;

    public static IReadOnlyList<MeasuredHold> Seen(IReadOnlyList<MeasuredHold> holds, DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(holds);
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.ClutchPortPerGear ? [.. holds.Select(hold => IsElsewhere(hold, holds) ? hold with { Clutch = null, IsClutchHoseElsewhere = true } : hold)] : holds;
    }

    /// <summary>Without the engagements of a gear while the hose was on the other's port.</summary>
    /// <param name="seen">The holds of the session, the hose already considered.</param>
    public static RecordedSession Seen(RecordedSession session, IReadOnlyList<MeasuredHold> seen, DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.ClutchPortPerGear ? session.With([.. session.Engagements.Where(record => !IsElsewhere(record, session, seen))]) : session;
    }

    private static bool IsElsewhere(MeasuredHold hold, IReadOnlyList<MeasuredHold> holds)
    {
        if (hold.Gear is not (Gear.Forward or Gear.Reverse) || hold.Clutch is null)
        {
            return false;
        }

        List<MeasuredHold> alike = [.. holds.Where(other => other.Clutch is not null && IsSameHose(other, hold.Session, hold.Gear, hold.Record.StartMicroseconds))];
        return HoldGates.ClutchIsEmpty(hold) || (alike.Exists(HoldGates.ClutchIsEmpty) && alike.TrueForAll(IsResidual));
    }

    private static bool IsElsewhere(EngagementRecord record, RecordedSession session, IReadOnlyList<MeasuredHold> seen)
    {
        List<MeasuredHold> alike = [.. seen.Where(hold => IsSameHose(hold, session, record.Gear, record.StartMicroseconds))];
        return alike.Count > 0 && alike.TrueForAll(hold => hold.IsClutchHoseElsewhere);
    }

    private static bool IsResidual(MeasuredHold hold) => hold.Main is { } main && hold.Clutch!.Value < Residual * main.Value;

    // Nobody opens a fitting with the engine running.
    private static bool IsSameHose(MeasuredHold hold, RecordedSession session, Gear gear, long microseconds) =>
        hold.Session == session && hold.Gear == gear && Stops(session, hold.Record.StartMicroseconds) == Stops(session, microseconds);

    private static int Stops(RecordedSession session, long microseconds) =>
        session.Holds.Count(hold => hold.Step == Step.Zero && hold.StartMicroseconds < microseconds);
}
