using LoggerBox.BoardParts.TwoWire;
using LoggerBox.Protocol.Records;

namespace LoggerBox.BoardParts.Loops
{
    /// <summary>The three loops, one converter each on one bus. A loop that gave nothing is missing; nothing old is given again.</summary>
    public sealed class LoopInputs
    {
        public const int FirstAddress = 0x48;

        private readonly BusCare _care;
        private readonly Ads1115[] _converters = new Ads1115[Channel.Count];

        public LoopInputs(ITwoWire bus, BusCare care)
        {
            _care = care;
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                _converters[channel] = new Ads1115(bus, FirstAddress + channel - Channel.Main);
            }
        }

        /// <summary>Bit n: channel n gave nothing at the last <see cref="Read"/>.</summary>
        public int Missing { get; private set; }

        public bool BusIsStuck => _care.IsStuck;

        public void Read(SampleSet sample, long now)
        {
            Missing = 0;
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                int counts = SampleSet.Missing;
                if (_care.MayUse(now))
                {
                    _care.Report(_converters[channel].Read(now, out counts), now);
                }

                sample.Values[channel] = counts;
                Missing |= counts == SampleSet.Missing ? 1 << channel : 0;
            }
        }
    }
}
