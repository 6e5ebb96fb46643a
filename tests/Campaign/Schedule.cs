using System.Collections.Generic;
using System.Linq;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Operator;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.Campaign;

/// <summary>Which trucks are tested: every cause in turn, and a sound truck for every five faulty ones.</summary>
internal static class Schedule
{
    /// <summary>Individuals of each design.</summary>
    public const int Individuals = 12;

    private const double SlipShare = 0.12;
    private static readonly double[] NoiseLevels = [0.5, 1, 1.5, 2.5, 4];

    public static IReadOnlyList<TestedTruck> Of(int trucks, int seed)
    {
        List<SimulatedCause> faults = [.. SimulatedCauses.All.Where(cause => cause.Code != SimulatedCauses.Healthy)];
        var chance = new SeededChance(seed, 200);
        return [.. Enumerable.Range(0, trucks).Select(i => Draw(i, i % 6 == 0 ? SimulatedCauses.All[0] : faults[(i - (i / 6) - 1) % faults.Count], seed, chance))];
    }

    private static TestedTruck Draw(int number, SimulatedCause cause, int seed, SeededChance chance)
    {
        bool tagged = chance.Happens(0.7) || cause.Code == "gear-tag-wrong";
        bool late = chance.Happens(0.2);
        return new TestedTruck(
            (seed * 100_000) + number,
            (int)chance.Between(0, TruckDesigns.All.Count),
            (int)chance.Between(0, Individuals),
            cause,
            cause.IsAllOrNothing ? chance.Between(0.3, 1) : chance.Between(0.04, 1),
            NoiseLevels[(int)chance.Between(0, NoiseLevels.Length)],
            tagged,
            late ? 1 : 0.4,
            Habits(cause, chance, new SeededChance((seed * 100_000) + number, 201)));
    }

    private static JobHabits Habits(SimulatedCause cause, SeededChance chance, SeededChance later) => new()
    {
        BrakesTheFirstStall = chance.Happens(SlipShare),
        HoldsWrongSpeedFirst = chance.Happens(SlipShare),
        SpeedsFirst = chance.Happens(0.3),
        SkipsRelief = chance.Happens(SlipShare),
        SkipsIdleInReverse = chance.Happens(SlipShare),
        SkipsClosingZero = chance.Happens(SlipShare),
        // Came later: drawn apart, so that each seed's trucks stay the ones that they were.
        WarmsUpInGear = cause.Code != "oil-cold" && later.Happens(SlipShare),
        WarmsUpAgain = later.Happens(SlipShare),
        SkipsWarmUp = cause.Code == "oil-cold",
    };
}
