using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Cues
{
    /// <summary>
    /// Plays one cue at a time to sounder, lamp and display. What is more urgent interrupts; what is less waits its turn, the newest only.
    /// Between cues the display shows the readout.
    /// </summary>
    public sealed class SignalPlayer
    {
        private const long TickMicroseconds = 100000;
        private const long TextMicroseconds = 2000000;

        // Nobody listens to an alarm for longer; the display and the record keep it.
        private const long LongestRepeatMicroseconds = 30000000;

        private CueSignal? _playing;
        private CueSignal? _waiting;
        private int _playingNumber;
        private int _waitingNumber;
        private long _began;

        public bool SounderOn { get; private set; }

        public bool LampOn { get; private set; }

        /// <summary>What the display shows: four places.</summary>
        public string Text { get; private set; } = "    ";

        /// <summary>What it shows when no cue has a word.</summary>
        public string Readout { get; set; } = "    ";

        public Cue Playing => _playing == null ? Cue.None : _playing.Cue;

        public void Give(Cue cue, int number, long now)
        {
            CueSignal? signal = CueTable.Find(cue);
            if (signal == null)
            {
                return;
            }

            if (_playing == null || signal.Rank >= _playing.Rank)
            {
                Begin(signal, number, now);
            }
            else
            {
                _waiting = signal;
                _waitingNumber = number;
            }
        }

        /// <summary>What the cue warned of is over.</summary>
        public void End(Cue cue)
        {
            _playing = Playing == cue ? null : _playing;
            _waiting = _waiting != null && _waiting.Cue == cue ? null : _waiting;
        }

        /// <summary>The pedal was let go.</summary>
        public void EndStallAlarms()
        {
            End(Cue.StallWarn);
            End(Cue.StallStop);
            End(Cue.Overspeed);
        }

        /// <summary>The operator has heard it.</summary>
        public void Quiet() => _playing = null;

        public void Step(long now)
        {
            if (_playing != null && IsOver(_playing, now - _began))
            {
                _playing = null;
            }

            if (_playing == null && _waiting != null)
            {
                Begin(_waiting, _waitingNumber, now);
                _waiting = null;
            }

            long played = now - _began;
            SounderOn = _playing != null && IsOn(_playing.Sounder, played, _playing.Repeats);
            LampOn = _playing != null && IsOn(_playing.Lamp, played, _playing.Repeats);
            Text = _playing == null || _playing.Display.Length == 0 ? Readout : DisplayWords.WithNumber(_playing.Display, _playingNumber);
        }

        private void Begin(CueSignal signal, int number, long now)
        {
            _playing = signal;
            _playingNumber = number;
            _began = now;
        }

        private static bool IsOver(CueSignal signal, long played)
        {
            int length = signal.Sounder.Length > signal.Lamp.Length ? signal.Sounder.Length : signal.Lamp.Length;
            long once = length * TickMicroseconds;
            long text = signal.Display.Length == 0 ? 0 : TextMicroseconds;
            return played >= (signal.Repeats ? LongestRepeatMicroseconds : once > text ? once : text);
        }

        private static bool IsOn(string pattern, long played, bool repeats)
        {
            if (pattern.Length == 0)
            {
                return false;
            }

            long tick = played / TickMicroseconds;
            return (repeats || tick < pattern.Length) && pattern[(int)(tick % pattern.Length)] == '#';
        }
    }
}
