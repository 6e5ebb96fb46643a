using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>Hold records into physical units with their uncertainty budgets.</summary>
public static class HoldMeasuring
{
    /// <summary>
    /// Half-width taken for an instrument whose accuracy is not stated, pascal: 0.25 % of a 14 bar (200 psi) transducer.
    /// </summary>
    public const double UnstatedAccuracyPascal = 3500;

    /// <summary>The same where the instrument's range is known.</summary>
    public const double UnstatedPartOfRange = 0.0025;

    /// <summary>Each hold under the step that the whole session makes it: the logger named it when it knew only what came before.</summary>
    /// <param name="plan">The truck's speeds, from the sheet that is judged against.</param>
    public static IReadOnlyList<MeasuredHold> Measure(RecordedSession session, PlanRecord plan)
    {
        ArgumentNullException.ThrowIfNull(session);
        HoldRecord[] holds = session.Holds.OrderBy(hold => hold.StartMicroseconds).ToArray();
        var names = new Step[holds.Length];
        StepNaming.Name(holds, holds.Length, plan, names);
        ZeroReading?[] zeros = [null, ZeroReading.Of(session, Channel.Main), ZeroReading.Of(session, Channel.Clutch), ZeroReading.Of(session, Channel.Converter)];
        return holds
            .Select((hold, index) => new MeasuredHold(
                session,
                hold,
                names[index],
                Speed(hold),
                Pressure(session, hold, Channel.Main, zeros),
                Pressure(session, hold, Channel.Clutch, zeros),
                Pressure(session, hold, Channel.Converter, zeros))
            {
                Zeros = zeros,
            })
            .ToList();
    }

    /// <summary>Peak in pascal, engine-off reading subtracted, or in rpm.</summary>
    public static double? Peak(MeasuredHold hold, int channel)
    {
        var reading = hold.Record.Readings[channel];
        if (!reading.Present)
        {
            return null;
        }

        if (channel == Channel.Speed)
        {
            return reading.Peak / 10.0;
        }

        double raw = hold.Session.Header.Pressures[channel - 1].PascalFromHundredths(reading.Peak * 100);
        return raw - (hold.Zeros[channel]?.Pascal ?? 0);
    }

    private static double Accuracy(ChannelCalibration calibration) => calibration switch
    {
        { AccuracyPascal: > 0 } => calibration.AccuracyPascal,
        { Kind: ChannelKind.CurrentLoop, SpanPascal: not 0 } => UnstatedPartOfRange * Math.Abs(calibration.SpanPascal),
        _ => UnstatedAccuracyPascal,
    };

    private static Measured? Speed(HoldRecord hold)
    {
        var reading = hold.Readings[Channel.Speed];
        return reading.Present
            ? new Measured(
                reading.SettledHundredths / 1000.0,
                new UncertaintyBudget().Add(reading.StandardErrorThousandths / 10000.0, reading.DegreesOfFreedom).AddResolution(0.1))
            : null;
    }

    private static Measured? Pressure(RecordedSession session, HoldRecord hold, int channel, ZeroReading?[] zeros)
    {
        var reading = hold.Readings[channel];
        var calibration = session.Header.Pressures[channel - 1];
        if (!reading.Present || calibration.Kind == ChannelKind.None)
        {
            return null;
        }

        double perCount = Math.Abs(calibration.PascalPerCount());
        var repeating = new UncertaintyBudget()
            .Add(perCount * reading.StandardErrorThousandths / 1000.0, reading.DegreesOfFreedom)
            .AddResolution(perCount);
        var budget = repeating.With(new UncertaintyBudget())
            .AddRectangular(Accuracy(calibration));
        double pascal = calibration.PascalFromHundredths(reading.SettledHundredths);
        if (zeros[channel] is { } zero)
        {
            pascal -= zero.Pascal;
            budget.Add(zero.StandardErrorPascal, zero.DegreesOfFreedom).AddRectangular(zero.DriftPascal ?? 0);
        }

        return new Measured(pascal, budget) { Repeating = repeating };
    }
}
