using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Operator;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.Campaign;

/// <summary>Tests trucks; each design's sheet and each individual's sound readings are made once.</summary>
internal sealed class Bench
{
    private readonly IReadOnlyList<Lazy<DataSheet>> _sheets =
        [.. Enumerable.Range(0, TruckDesigns.All.Count).Select(design => new Lazy<DataSheet>(() => PrintedSheet.Of(design)))];

    private readonly ConcurrentDictionary<(int Design, int Individual), Lazy<Judgement>> _sound = new();

    public Outcome Test(TestedTruck truck)
    {
        DataSheet sheet = _sheets[truck.Design].Value;
        FittedTruck fitted = truck.Fitted();
        Measurement measured = Measurement.Take(fitted, truck.Habits, truck.Seed, sheet);
        Judgement sound = _sound.GetOrAdd((truck.Design, truck.Individual), key => new Lazy<Judgement>(() => Sound(key.Design, key.Individual))).Value;
        return new Outcome(truck, measured, Visibility.Of(fitted, measured, sound));
    }

    private Judgement Sound(int design, int individual) =>
        Measurement.Take(
            new FittedTruck(TestedTruck.Sound(design, individual), new InstrumentParameters()), new JobHabits(), 77, _sheets[design].Value).True;
}
