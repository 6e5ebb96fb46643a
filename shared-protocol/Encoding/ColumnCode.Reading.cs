using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>A column's values at a time: the same values as one by one, and several times as fast. A day has millions.</summary>
    public sealed partial class ColumnCode
    {
        // So many bytes are fetched together, where there is room for them: most values need none.
        private const int FetchedBytes = 4;
        private const int FetchedBits = 8 * FetchedBytes;

        // A byte of ones: the code goes on, or is an escape.
        private const int TooManyOnes = 8;

        /// <summary>Reads the first values of a column that has begun. Any bits give some values.</summary>
        public void Read(BitReader bits, short[] column, int count)
        {
            int row = 0;
            while (row < count)
            {
                row = isMissing || bits.HasEnded ? row : ReadUsual(bits, column, row, count);
                if (row < count)
                {
                    column[row] = Take(bits);
                    row++;
                }
            }
        }

        // Values as they mostly are, up to the first that takes a long code or is not all there. All that it needs lies in locals, and the predictor's
        // rule stands here once more, as where they are written.
        private int ReadUsual(BitReader bits, short[] column, int from, int to)
        {
            Predictor foretelling = predictor;
            int foretold = foretelling.Foretold;
            int slope = foretelling.Slope;
            bool hasSlope = foretelling.HasSlope;
            int shift = foretelling.Shift;
            int lastShift = foretelling.LastShift;
            int age = foretelling.Age;
            byte[] leadingOnes = BitReader.LeadingOnes;
            byte[] bytes = bits.Source.Buffer;
            int at = bits.Source.Position;
            int end = bits.Source.End;
            ulong window = bits.Window;
            int left = bits.Left;
            int average = mean;
            int rice = parameter;
            int calm = mostCalm[rice];
            int row = from;
            for (; row < to; row++)
            {
                if (left <= BitReader.WindowBits - FetchedBits && end - at >= FetchedBytes)
                {
                    window |= (ulong)(((uint)bytes[at] << 24) | ((uint)bytes[at + 1] << 16) | ((uint)bytes[at + 2] << 8) | bytes[at + 3]) << (BitReader.WindowBits - FetchedBits - left);
                    at += FetchedBytes;
                    left += FetchedBits;
                }

                int ones = leadingOnes[(int)(window >> (BitReader.WindowBits - 8))];
                int taken = ones + 1 + rice;
                if (ones == TooManyOnes || taken > left)
                {
                    break;
                }

                // In two steps, as a shift by all 64 bits is one by none.
                int rest = (int)((window << (ones + 1)) >> 1 >> (BitReader.WindowBits - 1 - rice));
                window <<= taken;
                left -= taken;
                int folded = (ones << rice) | rest;
                int value = (short)(((foretold + Predictor.Half) >> Predictor.FractionBits) + ((folded >> 1) ^ -(folded & 1)));
                column[row] = (short)value;
                if (folded > calm && folded > (JumpTimes * (average >> MeanShift)) + JumpMore)
                {
                    foretelling.Begin(value);
                    foretold = foretelling.Foretold;
                    slope = foretelling.Slope;
                    shift = foretelling.Shift;
                    age = foretelling.Age;
                }
                else
                {
                    if (shift != lastShift && ++age == 2 << shift)
                    {
                        shift++;
                    }

                    int off = (value << Predictor.FractionBits) - foretold;
                    if (hasSlope)
                    {
                        slope += off >> Predictor.SlopeShift;
                    }

                    foretold += (off >> shift) + slope;
                }

                average += folded - (average >> MeanShift);
                int size = average >> (MeanShift + rice);
                if (size != 1)
                {
                    rice = Follow(rice, size);
                    calm = mostCalm[rice];
                }
            }

            foretelling.Foretold = foretold;
            foretelling.Slope = slope;
            foretelling.Shift = shift;
            foretelling.Age = age;
            bits.Source.Position = at;
            bits.Window = window;
            bits.Left = left;
            mean = average;
            parameter = rice;
            return row;
        }
    }
}
