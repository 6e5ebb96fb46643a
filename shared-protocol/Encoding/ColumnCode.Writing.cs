using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Many values of a column at a time: the same code as one by one, and several times as fast.</summary>
    public sealed partial class ColumnCode
    {
        // In whose place one that goes the long way stands, itself not counted.
        private const int RowsOfUnusual = 3;

        // By the number of ones: what makes a code of a folded error by addition. They and the zero after them, less their number, which the folded error has.
        private static readonly int[] Unary = UnaryCodes();

        /// <summary>Writes a column's values from..to (to not included), fewer where some are unusual: they take longer. Returns where it stopped.</summary>
        public int Write(short[] column, int from, int to, BitWriter writer)
        {
            int row = from;
            int until = to;
            while (row < until)
            {
                row = isMissing ? row : WriteUsual(column, row, until, writer);
                if (row < until)
                {
                    int value = column[row];
                    Put(value, writer);
                    until -= value == SampleSet.Missing ? 0 : RowsOfUnusual;
                    row++;
                }
            }

            return row;
        }

        // Values as they mostly are, up to the first that is missing, takes a long code or may be a jump. It runs with every sample set, so that all it needs lies in
        // locals, the predictor's rule stands here once more, and 2^parameter multiplies and divides: a shift by a variable takes its mask with it.
        private int WriteUsual(short[] column, int from, int to, BitWriter writer)
        {
            Predictor foretelling = predictor;
            int foretold = foretelling.Foretold;
            int slope = foretelling.Slope;
            bool hasSlope = foretelling.HasSlope;
            int shift = foretelling.Shift;
            int lastShift = foretelling.LastShift;
            int age = foretelling.Age;
            bool isPlain = shift == lastShift && !hasSlope;
            int[] unary = Unary;
            byte[] bytes = writer.Whole;
            int at = writer.WholeLength;
            uint pending = writer.Pending;
            int pendingBits = writer.PendingBits;
            int average = mean;
            int rice = parameter;
            int shortest = rice + 1;
            int power = 1 << rice;
            int most = mostUsual[rice];
            int least = power << MeanShift;
            int row = from;
            for (; row < to; row++)
            {
                // What is added before the shift rounds as the predictor's Next does.
                int value = column[row];
                int off = (value << Predictor.FractionBits) - foretold;
                int error = (off + (Predictor.Half - 1)) >> Predictor.FractionBits;
                int folded = (error << 1) ^ (error >> 31);
                if (folded > most || value == SampleSet.Missing)
                {
                    break;
                }

                int ones = folded / power;
                int bits = ones + shortest;
                pending = (pending << bits) | (uint)((unary[ones] * power) + folded);
                pendingBits += bits;
                while (pendingBits >= 8)
                {
                    pendingBits -= 8;
                    bytes[at++] = (byte)(pending >> pendingBits);
                }

                if (!isPlain)
                {
                    if (shift != lastShift && ++age == 2 << shift)
                    {
                        shift++;
                        isPlain = shift == lastShift;
                    }

                    slope += hasSlope ? off >> Predictor.SlopeShift : 0;
                    foretold += slope;
                }

                foretold += off >> shift;
                average += folded - (average >> MeanShift);
                if ((uint)(average - least) >= (uint)least)
                {
                    rice = Follow(rice, average >> (MeanShift + rice));
                    shortest = rice + 1;
                    power = 1 << rice;
                    most = mostUsual[rice];
                    least = power << MeanShift;
                }
            }

            foretelling.Foretold = foretold;
            foretelling.Slope = slope;
            foretelling.Shift = shift;
            foretelling.Age = age;
            writer.WholeLength = at;
            writer.Pending = pending;
            writer.PendingBits = pendingBits;
            mean = average;
            parameter = rice;
            return row;
        }

        // A short code, and no jump.
        private static int[] UsualErrors(int[] calm)
        {
            int[] most = new int[MaxParameter + 1];
            for (int rice = 0; rice <= MaxParameter; rice++)
            {
                int ones = MostUsualBits - rice < EscapeOnes ? MostUsualBits - rice + 1 : EscapeOnes;
                most[rice] = (ones << rice) - 1;
                most[rice] = calm[rice] < most[rice] ? calm[rice] : most[rice];
            }

            return most;
        }

        // The parameter follows the mean error so closely that the mean is never below 2^parameter, but for parameter 0.
        private static int[] CalmErrors(bool jumps)
        {
            int[] most = new int[MaxParameter + 1];
            for (int rice = 0; rice <= MaxParameter; rice++)
            {
                most[rice] = jumps ? (rice == 0 ? 0 : JumpTimes << rice) + JumpMore : int.MaxValue;
            }

            return most;
        }

        private static int[] UnaryCodes()
        {
            int[] codes = new int[EscapeOnes];
            for (int ones = 0; ones < codes.Length; ones++)
            {
                codes[ones] = (2 << ones) - 2 - ones;
            }

            return codes;
        }

        private void Start(int value)
        {
            hasBegun = true;
            predictor.Begin(value);
        }
    }
}
