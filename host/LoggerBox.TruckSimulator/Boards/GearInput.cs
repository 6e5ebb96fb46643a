using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Boards;

/// <summary>The two opto-isolated inputs of the direction selector; the switch follows the lever late and not always alike.</summary>
public sealed class GearInput(SeededChance chance)
{
    private const double EarliestSeconds = 0.02;
    private const double LatestSeconds = 0.4;
    private Selector _coming;
    private double _waitSeconds;

    public Gear Gear { get; private set; } = Gear.Neutral;

    public void Follow(Selector selector, double seconds)
    {
        if (selector != _coming)
        {
            _coming = selector;
            _waitSeconds = chance.Between(EarliestSeconds, LatestSeconds);
        }

        _waitSeconds -= seconds;
        if (_waitSeconds <= 0)
        {
            Gear = AsTagged(_coming);
        }
    }

    private static Gear AsTagged(Selector selector) => selector switch
    {
        Selector.Forward => Gear.Forward,
        Selector.Reverse => Gear.Reverse,
        _ => Gear.Neutral,
    };
}
