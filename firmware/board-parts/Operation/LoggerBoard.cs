using LoggerBox.BoardParts.Cues;
using LoggerBox.BoardParts.Inputs;
using LoggerBox.BoardParts.Loops;
using LoggerBox.Capture.Board;
using LoggerBox.Capture.Speed;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Operation
{
    /// <summary>The board as the capture engine sees it: pickup, loops, selector and the operator's word, and the cues that go back.</summary>
    public sealed class LoggerBoard : IBoard
    {
        public readonly SignalPlayer Signals = new SignalPlayer();
        public readonly SetUp SetUp = new SetUp();

        private readonly IPulseCounter _counter;
        private readonly LoopInputs _loops;
        private GearInputs _gear = new GearInputs(false);
        private PulseSpeed _speed = new PulseSpeed(1, 1);
        private long _now;
        private int _speedTenths = SampleSet.Missing;

        public LoggerBoard(IPulseCounter counter, LoopInputs loops)
        {
            _counter = counter;
            _loops = loops;
        }

        /// <summary>What a cue's ### shows.</summary>
        public int CueNumber { get; set; }

        public bool GearInputsAreBothOn => _gear.AreBothOn;

        /// <summary>Before a session: what its header says of the pickup and the selector.</summary>
        public void Begin(SessionHeader header)
        {
            _speed = new PulseSpeed(header.PickupPulses, header.PickupRevolutions);
            _gear = new GearInputs(header.HasGearInput);
            SetUp.Forget();
        }

        /// <summary>Each time round the loop: counter and contacts want to be looked at more often than samples are taken.</summary>
        public void Poll(InputLevels levels, long now)
        {
            _now = now;
            _counter.Read(out long count, out long microseconds);
            _speed.Poll(count, microseconds);
            _gear.Update(levels.Forward, levels.Reverse, now);
        }

        public void Read(SampleSet sample)
        {
            _speed.Read(sample, _now);
            _speedTenths = sample.Values[Channel.Speed];
            _loops.Read(sample, _now);
        }

        public Gear ReadGear() => _gear.Gear;

        public Step ReadStepMark() => SetUp.Mark(_gear.Gear, _speedTenths, _now);

        // No sensor: the oil's temperature is read by the technician and goes into the work order.
        public int ReadOilTenthsCelsius() => SampleSet.Missing;

        public void Show(Cue cue)
        {
            if (cue == Cue.SetUpClearOrDown)
            {
                SetUp.Ask(_now);
            }

            if (cue == Cue.CoolDown)
            {
                Signals.EndStallAlarms();
            }

            if (cue == Cue.ZeroTaken)
            {
                Signals.End(Cue.ZeroAgain);
            }

            Signals.Give(cue, CueNumber, _now);
        }
    }
}
