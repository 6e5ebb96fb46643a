namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// How far a speed may be from the truth, in parts of a period over the window. Where edges come faster than they can be told apart, a lost or
    /// doubled one is not seen, but the edges behind it stand a period off the line of those before it: they scatter wider than their brackets.
    /// </summary>
    internal sealed class SpeedDoubt
    {
        /// <summary>Of one period.</summary>
        public const int Parts = 10000;

        // Steps of one period at random moments scatter the edges about their best line by a fifteenth of their number, squared; a fifth more, for what
        // one window shows of them is often less.
        private const int StepsOfScatter = 18;

        // A mean over some 256 edges: what one window happens to show of its faults is little.
        private const int MemoryShift = 8;
        private const long MostSquare = 1000000000000;

        // 100 times the square root.
        private static readonly short[] Roots =
        {
            0, 100, 141, 173, 200, 224, 245, 265, 283, 300, 316, 332, 346, 361, 374, 387, 400, 412, 424, 436, 447, 458, 469, 480, 490, 500, 510, 520, 529, 539, 548, 557,
            566, 574, 583, 592, 600, 608, 616, 624, 632, 640, 648, 656, 663, 671, 678, 686, 693, 700, 707, 714, 721, 728, 735, 742, 748, 755, 762, 768, 775, 781, 787, 794, 800,
        };

        private readonly EdgeWindow window;
        private long memory;
        private long now;
        private long knownSteps;
        private long knownRoot;

        public SpeedDoubt(EdgeWindow window)
        {
            this.window = window;
        }

        /// <summary>Faults that the readings of the last seconds were off by, all to one side at the worst.</summary>
        public long Lasting => StepsOfScatter * (memory >> MemoryShift);

        public void Clear() => memory = now = 0;

        /// <summary>Edges whose bounds agree: nothing is lost among them.</summary>
        public void TakeAgreeing()
        {
            now = 0;
            memory -= memory >> MemoryShift;
        }

        /// <summary>Looks at how the window's edges scatter about their line; the bracket is what polls and period leave open of an edge.</summary>
        public void TakeScatter(long periodNanoseconds, long bracketMicroseconds)
        {
            long square = window.SquareResidual(periodNanoseconds);
            square = square < MostSquare ? square : MostSquare;

            // A twelfth of the bracket's square, and two standard errors of the mean of so many squares.
            int root = Roots[window.Count];
            long expected = (bracketMicroseconds * bracketMicroseconds * (root + 180)) / (12L * root);
            long period = periodNanoseconds / 100;
            now = square <= expected || period == 0 ? 0 : (square - expected) * 100 * Parts / (period * period);
            memory += now - (memory >> MemoryShift);
        }

        /// <summary>Twice the standard deviation of the line's periods over the window, and what faults may add.</summary>
        public long OfLine(long periodNanoseconds, long bracketMicroseconds) =>
            (bracketMicroseconds * (200000L * Parts / 1000) / Roots[window.Count] * 1000 / periodNanoseconds) + OfFaults();

        /// <summary>What faults may add: all to one side, and twice as much as so many by chance turn a line.</summary>
        public long OfFaults()
        {
            long lasting = Lasting;
            long steps = StepsOfScatter * now;
            steps = steps > lasting ? steps : lasting;
            if (steps <= 0)
            {
                return 0;
            }

            // From edge to edge they are mostly as many.
            if (steps != knownSteps)
            {
                knownSteps = steps;
                knownRoot = IntegerMath.SquareRoot(steps * (48 * Parts / 10));
            }

            return steps + knownRoot;
        }
    }
}
