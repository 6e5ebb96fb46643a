using LoggerBox.BoardParts.TwoWire;
using LoggerBox.Protocol.Records;

namespace LoggerBox.BoardParts.Loops
{
    /// <summary>
    /// One free-running converter. A value counts only when the configuration that is read after it is still the one that was written:
    /// a chip that restarted while the starter turned would otherwise go on with another range. It never waits.
    /// </summary>
    public sealed class Ads1115
    {
        // A chip that is not there is asked four times a second.
        private const long AskAgainMicroseconds = 250000;

        private readonly ITwoWire _bus;
        private readonly int _address;
        private readonly byte[] _configuration =
        {
            Ads1115Register.Configuration, Ads1115Register.FreeRunning >> 8, Ads1115Register.FreeRunning & 0xFF,
        };

        private readonly byte[] _word = new byte[2];
        private bool _isConfigured;
        private long _readyAt;
        private long _askAt = long.MinValue;

        public Ads1115(ITwoWire bus, int address)
        {
            _bus = bus;
            _address = address;
        }

        /// <summary>Times that the chip did not answer, or was found at other settings than it was given.</summary>
        public int Faults { get; private set; }

        public bool IsFaulty { get; private set; } = true;

        /// <summary>The newest conversion, or <see cref="SampleSet.Missing"/>.</summary>
        public TwoWireResult Read(long now, out int counts)
        {
            counts = SampleSet.Missing;
            if (now < _askAt)
            {
                return TwoWireResult.NoAnswer;
            }

            TwoWireResult result = _isConfigured ? ReadConversion(now, out counts) : Configure(now);
            if (result != TwoWireResult.Done)
            {
                Fail();
                _askAt = result == TwoWireResult.NoAnswer ? now + AskAgainMicroseconds : long.MinValue;
            }

            return result;
        }

        private TwoWireResult Configure(long now)
        {
            TwoWireResult result = _bus.Write(_address, _configuration, _configuration.Length);
            _isConfigured = result == TwoWireResult.Done;
            _readyAt = now + Ads1115Register.FirstConversionMicroseconds;
            return result;
        }

        private TwoWireResult ReadConversion(long now, out int counts)
        {
            counts = SampleSet.Missing;
            TwoWireResult result = _bus.ReadRegister(_address, Ads1115Register.Conversion, _word, 2);
            if (result != TwoWireResult.Done)
            {
                return result;
            }

            int value = Ads1115Register.Counts(Ads1115Register.Word(_word[0], _word[1]));
            result = _bus.ReadRegister(_address, Ads1115Register.Configuration, _word, 2);
            if (result != TwoWireResult.Done)
            {
                return result;
            }

            if (!Ads1115Register.IsFreeRunning(Ads1115Register.Word(_word[0], _word[1])))
            {
                Fail();
                return TwoWireResult.Done;
            }

            IsFaulty = now < _readyAt;
            counts = IsFaulty ? SampleSet.Missing : value;
            return TwoWireResult.Done;
        }

        private void Fail()
        {
            _isConfigured = false;
            IsFaulty = true;
            Faults++;
        }
    }
}
