using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Tests.Steps;

/// <summary>Holds of an invented truck put together one by one, and the names that they get.</summary>
internal sealed class NamedHolds
{
    private static readonly PlanRecord Plan = new()
    {
        IdleMinTenths = 6400,
        IdleMaxTenths = 7600,
        GovernedTenths = 24500,
        GovernedToleranceTenths = 600,
        StallForwardTenths = 19400,
        StallForwardToleranceTenths = 1200,
        StallReverseTenths = 19400,
        StallReverseToleranceTenths = 1200,
    };

    private readonly List<HoldRecord> holds = [];

    /// <param name="directly">Reached from the hold before, with the pedal down.</param>
    /// <param name="approachMilliseconds">How long the speed took to come up from idle.</param>
    public void Add(
        Gear gear,
        double rpm,
        double? peak = null,
        bool directly = false,
        bool pressed = false,
        double seconds = 5,
        Step mark = Step.None,
        int approachMilliseconds = 400)
    {
        HoldRecord? before = holds.LastOrDefault();
        long after = before is null ? 0 : before.StartMicroseconds + (before.DurationMilliseconds * 1000L);
        HoldRecord hold = new()
        {
            StartMicroseconds = after + (directly ? 600000 : 12000000),
            DurationMilliseconds = (int)(seconds * 1000),
            Gear = gear,
            Step = mark,
            Marked = mark != Step.None,
            ClutchPressed = pressed || gear is Gear.Forward or Gear.Reverse,
            ApproachFromTenths = directly ? before!.Readings[Channel.Speed].SettledHundredths / 100 : 7000,
            ApproachMilliseconds = rpm > 1000 && !directly ? approachMilliseconds : 0,
        };
        hold.Readings[Channel.Speed].Present = true;
        hold.Readings[Channel.Speed].SettledHundredths = (int)(rpm * 1000);
        hold.Readings[Channel.Speed].Peak = (int)((peak ?? (rpm * 1.005)) * 10);
        holds.Add(hold);
    }

    public string[] Names()
    {
        var names = new Step[holds.Count];
        StepNaming.Name([.. holds], holds.Count, Plan, names);
        return names.Select(StepCodes.Text).ToArray();
    }
}
