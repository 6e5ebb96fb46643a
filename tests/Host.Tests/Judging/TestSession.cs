using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>
/// A recorded session written down reading by reading: an invented sound truck to begin with, pressures in psi. No formula of the judge is in it.
/// </summary>
public sealed class TestSession
{
    private const int PascalPerCount = 100;

    private readonly Dictionary<Step, double?[]> readings = new()
    {
        [Step.Zero] = [0, 0.3, -0.2, 0.1],
        [Step.IdleNeutral] = [750, 70, 0, 14],
        [Step.IdleForward] = [745, 69.6, 65, 13.95],
        [Step.IdleReverse] = [746, 69.7, 65.2, 13.96],
        [Step.HoldNeutral] = [2010, 163, 0, 24.3],
        [Step.HoldForward] = [2003, 162.6, 158, 24.22],
        [Step.HoldReverse] = [1995, 162.3, 157.6, 24.18],
        [Step.Governed] = [2450, 175, 0, 27],
        [Step.Relief] = [2290, 171, 0, 26.1],
        [Step.StallForward] = [1800, 149, 144, 22.8],
        [Step.StallReverse] = [1797, 149, 144.2, 22.8],
    };

    public double ZeroMain { get; set; } = 0.3;

    public double ZeroClutch { get; set; } = -0.2;

    public double ZeroConverter { get; set; } = 0.1;

    public double? EngageForward { get; set; } = 1.0;

    public double? EngageReverse { get; set; } = 1.05;

    /// <summary>The lever or the pedal moved before the pressure stood.</summary>
    public bool EngagementsCutOff { get; set; }

    public bool ForwardNeverFills { get; set; }

    public bool ReverseNeverFills { get; set; }

    public double RunUp { get; set; } = 0.9;

    public double? OilCelsius { get; set; }

    /// <summary>Scatter of main as a part of it.</summary>
    public double Scatter { get; set; } = 0.004;

    /// <summary>A factor on every shown speed.</summary>
    public double SpeedScale { get; set; } = 1;

    /// <summary>A hold that the logger said to drift, and by how much a second, in rpm or psi.</summary>
    public (Step Step, int Channel, double PerSecond)? Drift { get; set; }

    public bool GearsKnown { get; set; } = true;

    public Func<Gear, Gear> Tagged { get; set; } = gear => gear;

    public (int First, int Second)? SwappedChannels { get; set; }

    public TestSession Set(Step step, double? rpm = null, double? main = null, double? clutch = null, double? converter = null)
    {
        var row = readings[step];
        row[0] = rpm ?? row[0];
        row[1] = main ?? row[1];
        row[2] = clutch ?? row[2];
        row[3] = converter ?? row[3];
        return this;
    }

    /// <summary>One channel of some steps times a factor.</summary>
    public TestSession Scale(int channel, double factor, params Step[] steps)
    {
        foreach (var step in steps)
        {
            readings[step][channel] *= factor;
        }

        return this;
    }

    public TestSession Without(int channel)
    {
        foreach (var row in readings.Values)
        {
            row[channel] = null;
        }

        return this;
    }

    public TestSession Without(Step step)
    {
        readings.Remove(step);
        return this;
    }

    public TestSession Unfilled(bool forward)
    {
        ForwardNeverFills |= forward;
        ReverseNeverFills |= !forward;
        return this;
    }

    public TestSession Oil(double celsius)
    {
        OilCelsius = celsius;
        return this;
    }

    public RecordedSession Build()
    {
        var header = new SessionHeader { SampleIntervalMicroseconds = 10_000, HasGearInput = GearsKnown };
        foreach (var calibration in header.Pressures)
        {
            calibration.Kind = ChannelKind.RecordedPressure;
            calibration.SpanPascal = PascalPerCount;
        }

        long time = 0;
        var holds = readings.Select(pair => Hold(pair.Key, pair.Value, time += 60_000_000)).ToList();
        return new RecordedSession
        {
            Header = header,
            Holds = holds,
            Engagements = [.. Engagement(Gear.Forward, EngageForward, ForwardNeverFills, EngagementsCutOff), .. Engagement(Gear.Reverse, EngageReverse, ReverseNeverFills, EngagementsCutOff)],
            RunUps = [new RunUpRecord { Gear = Gear.Neutral, FromTenths = 7500, ToTenths = (int)(10 * (readings.TryGetValue(Step.Governed, out var g) ? g[0] ?? 2450 : 2450) * SpeedScale), Milliseconds = (int)(1000 * RunUp) }],
            Events = OilCelsius is { } oil ? [new EventRecord { Kind = EventKind.OilTemperature, Value = (int)(oil * 10) }] : [],
            End = new SessionEnd { Reason = SessionEndReason.EndOfRecording },
        };
    }

    private static Gear GearOf(Step step) => step switch
    {
        Step.IdleForward or Step.HoldForward or Step.StallForward => Gear.Forward,
        Step.IdleReverse or Step.HoldReverse or Step.StallReverse => Gear.Reverse,
        _ => Gear.Neutral,
    };

    private static Step WithoutGear(Step step) => step switch
    {
        Step.IdleForward or Step.IdleReverse => Step.IdleInGear,
        Step.HoldForward or Step.HoldReverse => Step.HoldInGear,
        Step.StallForward or Step.StallReverse => Step.StallInGear,
        _ => step,
    };

    private static IEnumerable<EngagementRecord> Engagement(Gear gear, double? seconds, bool never, bool cut)
    {
        if (never || seconds is not null)
        {
            int total = (int)(1000 * (seconds ?? 0));
            yield return new EngagementRecord
            {
                StartMicroseconds = gear == Gear.Forward ? 175_000_000 : 235_000_000,
                Gear = gear,
                Disturbed = cut,
                FillMilliseconds = total / 3,
                RiseMilliseconds = total - (total / 3),
                TotalMilliseconds = total,
                SpeedTenths = 7500,
                NeverFilled = never,
            };
        }
    }

    private static Step Named(Step step, Gear gear) => (step, gear) switch
    {
        (Step.IdleNeutral or Step.IdleForward or Step.IdleReverse, Gear.Neutral) => Step.IdleNeutral,
        (Step.IdleNeutral or Step.IdleForward or Step.IdleReverse, Gear.Forward) => Step.IdleForward,
        (Step.IdleNeutral or Step.IdleForward or Step.IdleReverse, Gear.Reverse) => Step.IdleReverse,
        (Step.HoldNeutral or Step.HoldForward or Step.HoldReverse, Gear.Neutral) => Step.HoldNeutral,
        (Step.HoldNeutral or Step.HoldForward or Step.HoldReverse, Gear.Forward) => Step.HoldForward,
        (Step.HoldNeutral or Step.HoldForward or Step.HoldReverse, Gear.Reverse) => Step.HoldReverse,
        _ => step,
    };

    private HoldRecord Hold(Step step, double?[] row, long time)
    {
        var gear = Tagged(GearOf(step));
        var hold = new HoldRecord
        {
            Step = GearsKnown ? Named(step, gear) : WithoutGear(step),
            Gear = GearsKnown ? gear : Gear.Unknown,
            StartMicroseconds = time,
            DurationMilliseconds = 4000,
            Marked = true,
            ClutchPressed = GearOf(step) != Gear.Neutral,
        };
        var values = row.ToArray();
        if (SwappedChannels is var (first, second))
        {
            (values[first], values[second]) = (values[second], values[first]);
        }

        double[] zeros = [0, ZeroMain, ZeroClutch, ZeroConverter];
        for (int channel = Channel.Speed; channel < Channel.Count; channel++)
        {
            if (values[channel] is { } value)
            {
                Fill(hold.Readings[channel], channel, step == Step.Zero && channel > 0 ? zeros[channel] : value + zeros[channel]);
            }
        }

        if (Drift is var (drifting, moved, perSecond) && drifting == step)
        {
            hold.Drifting = (byte)(1 << moved);
            hold.Readings[moved].SlopeHundredthsPerSecond = (int)Math.Round(100 * perSecond * (moved == Channel.Speed ? 10 : PressureUnit.Psi.InPascal() / PascalPerCount));
        }

        return hold;
    }

    private void Fill(HoldReading reading, int channel, double value)
    {
        double unit = channel == Channel.Speed ? 10 * SpeedScale : PressureUnit.Psi.InPascal() / PascalPerCount;
        reading.Present = true;
        reading.SettledHundredths = (int)Math.Round(100 * value * unit);
        reading.Peak = (int)Math.Round(1.01 * value * unit);
        reading.Lowest = (int)Math.Round(0.99 * value * unit);
        reading.DeviationHundredths = (int)(100 * Scatter * Math.Abs(value) * unit);
        reading.StandardErrorThousandths = Math.Max(1, reading.DeviationHundredths * 10 / 8);
        reading.DegreesOfFreedom = 60;
    }
}
