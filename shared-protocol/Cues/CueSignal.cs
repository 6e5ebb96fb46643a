using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Cues
{
    /// <summary>How one cue is seen and heard. Patterns count tenths of a second: # on, . off.</summary>
    public sealed class CueSignal
    {
        public readonly Cue Cue;

        /// <summary>Four places of the display; ### takes a number; empty leaves the running readout.</summary>
        public readonly string Display;
        public readonly string Sounder;
        public readonly string Lamp;

        /// <summary>Goes on until what it warns of is over.</summary>
        public readonly bool Repeats;

        /// <summary>A higher one interrupts a lower one.</summary>
        public readonly int Rank;

        public CueSignal(Cue cue, int rank, string display, string sounder, string lamp, bool repeats)
        {
            Cue = cue;
            Rank = rank;
            Display = display;
            Sounder = sounder;
            Lamp = lamp;
            Repeats = repeats;
        }
    }
}
