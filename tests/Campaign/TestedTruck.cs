using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Operator;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.Campaign;

/// <summary>One truck of the campaign: which design, which individual of it, what is wrong with it, how it was tested.</summary>
/// <param name="Seed">Of everything that happens by chance in this test.</param>
/// <param name="Severity">0 just begins, 1 gross.</param>
/// <param name="Noise">Random noise of the instruments beside the usual.</param>
internal sealed record TestedTruck(
    int Seed, int Design, int Individual, SimulatedCause Cause, double Severity, double Noise, bool Tagged, double LatestTagSeconds, JobHabits Habits)
{
    public bool IsHealthy => Cause.Code == SimulatedCauses.Healthy;

    /// <summary>The individual in order.</summary>
    public static TruckParameters Sound(int design, int individual) =>
        TruckVariation.Of(TruckDesigns.All[design].Truck, new SeededChance(individual, 100 + design));

    public FittedTruck Fitted()
    {
        var instruments = new InstrumentParameters { Noise = Noise, LatestTagSeconds = LatestTagSeconds };
        FittedTruck faulty = Cause.Apply(new FittedTruck(Sound(Design, Individual), instruments), Severity, new SeededChance(Seed, 1));
        return Tagged ? faulty : faulty with { Instruments = faulty.Instruments with { TagWiring = null } };
    }

    public override string ToString() =>
        $"{Cause.Code} {Severity:0.00}, {TruckDesigns.All[Design].Name} {Individual}, noise {Noise}, {(Tagged ? "tagged" : "no tags")}, seed {Seed}";
}
