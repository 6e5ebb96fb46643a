using LoggerBox.BoardParts.Loops;
using LoggerBox.Capture;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Operation
{
    /// <summary>Looks after each sample set for what of the board failed or came back: one event and one cue for each change.</summary>
    public sealed class FaultWatch
    {
        // A converter that begins anew misses a set or two.
        private const int SetsUntilBelieved = 10;

        // A counter that races its overflow is noted, but not once for each race.
        private const long CounterAgainMicroseconds = 60000000;

        private readonly LoggerBoard _board;
        private readonly LoopInputs _loops;
        private readonly int[] _missingSets = new int[Channel.Count];
        private int _believedMissing;
        private bool _busStuck;
        private bool _bothGears;
        private int _rejected;
        private long _counterNoted = -CounterAgainMicroseconds;

        public FaultWatch(LoggerBoard board, LoopInputs loops)
        {
            _board = board;
            _loops = loops;
        }

        public void Look(CaptureEngine engine, int rejectedPulseReadings, long now)
        {
            LookAtBus(engine, now);
            LookAtLoops(engine, now);
            if (_board.GearInputsAreBothOn != _bothGears)
            {
                _bothGears = !_bothGears;
                Tell(engine, BoardFault.GearInputs, _bothGears ? 1 : 0, Cue.GearInputsBoth, now);
            }

            if (rejectedPulseReadings != _rejected && now - _counterNoted >= CounterAgainMicroseconds)
            {
                _rejected = rejectedPulseReadings;
                _counterNoted = now;
                engine.Note(EventKind.BoardFault, EventRecord.Pair((int)BoardFault.PulseCounter, 1), now);
            }
        }

        private void LookAtBus(CaptureEngine engine, long now)
        {
            if (_loops.BusIsStuck != _busStuck)
            {
                _busStuck = !_busStuck;
                Tell(engine, BoardFault.LoopBus, _busStuck ? 1 : 0, Cue.ReadingsLost, now);
            }
        }

        private void LookAtLoops(CaptureEngine engine, long now)
        {
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                int bit = 1 << channel;
                bool isMissing = (_loops.Missing & bit) != 0;
                _missingSets[channel] = isMissing ? _missingSets[channel] + 1 : 0;
                bool believed = (_believedMissing & bit) != 0;
                if (!believed && _missingSets[channel] >= SetsUntilBelieved)
                {
                    _believedMissing |= bit;
                    Tell(engine, BoardFault.LoopConverter, channel, _busStuck ? Cue.None : Cue.ReadingsLost, now);
                }
                else if (believed && !isMissing)
                {
                    _believedMissing &= ~bit;
                    Tell(engine, BoardFault.LoopConverter, 0, Cue.ReadingsLost, now);
                }
            }
        }

        private void Tell(CaptureEngine engine, BoardFault fault, int detail, Cue cue, long now)
        {
            engine.Note(EventKind.BoardFault, EventRecord.Pair((int)fault, detail), now);
            if (detail != 0)
            {
                engine.Tell(cue, now);
            }
            else if (_believedMissing == 0 || cue != Cue.ReadingsLost)
            {
                _board.Signals.End(cue);
            }
        }
    }
}
