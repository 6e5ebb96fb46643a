using System.Collections.Generic;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Boards;

/// <summary>The two opto-isolated inputs of the direction selector; the switch follows the lever late and not always alike.</summary>
public sealed class GearInput(InstrumentParameters instruments, SeededChance chance)
{
    private const double EarliestSeconds = 0.02;
    private Selector _coming;
    private double _waitSeconds;

    public Gear Gear { get; private set; } = AsTagged(instruments.TagWiring, Selector.Neutral);

    public void Follow(Selector selector, double seconds)
    {
        if (selector != _coming)
        {
            _coming = selector;
            _waitSeconds = chance.Between(EarliestSeconds, instruments.LatestTagSeconds);
        }

        _waitSeconds -= seconds;
        if (_waitSeconds <= 0)
        {
            Gear = AsTagged(instruments.TagWiring, _coming);
        }
    }

    private static Gear AsTagged(IReadOnlyList<Gear>? wiring, Selector selector) => wiring is null ? Gear.Unknown : wiring[(int)selector];
}
