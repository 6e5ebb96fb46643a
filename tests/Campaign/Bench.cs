using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Operator;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.Campaign;

/// <summary>Tests trucks; each design's sheet is made once.</summary>
internal sealed class Bench
{
    private readonly IReadOnlyList<Lazy<DataSheet>> _sheets =
        [.. Enumerable.Range(0, TruckDesigns.All.Count).Select(design => new Lazy<DataSheet>(() => PrintedSheet.Of(design)))];

    public Outcome Test(TestedTruck truck)
    {
        DataSheet sheet = _sheets[truck.Design].Value;
        FittedTruck fitted = truck.Fitted();
        Measurement measured = Measurement.Take(fitted, truck.Habits, truck.Seed, sheet);
        return new Outcome(truck, measured, Visibility.Of(fitted, measured, () => Sound(truck, sheet)));
    }

    // The same truck without its fault, tested in the same way: what still differs is the fault's.
    private static Judgement Sound(TestedTruck truck, DataSheet sheet) => Measurement.Take(
        new FittedTruck(TestedTruck.Sound(truck.Design, truck.Individual), new InstrumentParameters()), truck.Habits, truck.Seed, sheet).True;
}
