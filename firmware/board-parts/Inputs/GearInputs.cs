using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Inputs
{
    /// <summary>The direction selector's two isolated inputs. Neither is neutral; both at once is a fault of the wiring, and no gear.</summary>
    public sealed class GearInputs
    {
        private const long SettleMicroseconds = 40000;

        private readonly bool _isWired;
        private readonly Debounced _forward = new Debounced(SettleMicroseconds);
        private readonly Debounced _reverse = new Debounced(SettleMicroseconds);

        public GearInputs(bool isWired)
        {
            _isWired = isWired;
        }

        public Gear Gear { get; private set; } = Gear.Unknown;

        public bool AreBothOn => _isWired && _forward.IsOn && _reverse.IsOn;

        public void Update(bool forward, bool reverse, long now)
        {
            _forward.Update(forward, now);
            _reverse.Update(reverse, now);
            Gear = !_isWired || AreBothOn ? Gear.Unknown
                : _forward.IsOn ? Gear.Forward
                : _reverse.IsOn ? Gear.Reverse
                : Gear.Neutral;
        }
    }
}
