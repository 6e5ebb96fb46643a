using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// One column under one predictor: Rice codes of its errors, their parameter following the errors' size. The same state runs
    /// when bits are only counted, when they are written and when they are read.
    /// </summary>
    public sealed partial class ColumnCode
    {
        /// <summary>So many ones and the value itself stand in place of a longer code, and for a missing reading.</summary>
        public const int EscapeOnes = 20;

        public const int ValueBits = 16;

        /// <summary>Bits that one value takes at most.</summary>
        public const int LongestBits = EscapeOnes + ValueBits + 1;

        // The mean error runs over about 16 values.
        internal const int MeanShift = 4;

        // Ones of a code that goes the short way, its zero and the rest not counted.
        private const int MostUsualBits = BitWriter.MaxBits - 1;

        // A value jumped whose error is so many times the mean error, and some more.
        private const int JumpTimes = 5;
        private const int JumpMore = 8;

        private const int MaxParameter = 15;
        private const int FirstParameter = 2;

        internal const int FirstMean = 1 << (FirstParameter + MeanShift);

        private readonly Predictor predictor;

        // By the parameter: up to this folded error none is a jump, and a value is written the short way.
        private readonly int[] mostCalm;
        private readonly int[] mostUsual;
        private int parameter;
        private int mean;
        private bool isMissing;
        private bool hasBegun;

        public ColumnCode(Predictor predictor)
        {
            this.predictor = predictor;
            mostCalm = CalmErrors(predictor.Jumps);
            mostUsual = UsualErrors(mostCalm);
        }

        public void Begin()
        {
            parameter = FirstParameter;
            mean = FirstMean;
            isMissing = true;
            hasBegun = false;
        }

        /// <summary>Takes one value of any kind; returns its bits, which go to the writer if there is one.</summary>
        public int Put(int value, BitWriter? writer)
        {
            if (!isMissing)
            {
                return value == SampleSet.Missing ? PutEscape(value, writer) : PutPresent(value, writer);
            }

            isMissing = value == SampleSet.Missing;
            writer?.Write(isMissing ? 1 : 0, 1);
            if (isMissing)
            {
                return 1;
            }

            if (hasBegun)
            {
                return 1 + PutPresent(value, writer);
            }

            writer?.Write(value & 0xFFFF, ValueBits);
            Start(value);
            return 1 + ValueBits;
        }

        /// <summary>The next value. Any bits give some value.</summary>
        public short Take(BitReader reader)
        {
            if (isMissing)
            {
                isMissing = reader.Read(1) == 1;
                if (isMissing)
                {
                    return SampleSet.Missing;
                }

                if (!hasBegun)
                {
                    short first = (short)reader.Read(ValueBits);
                    Start(first);
                    return first;
                }
            }

            int ones = reader.ReadOnes(EscapeOnes);
            if (ones == EscapeOnes)
            {
                short value = (short)reader.Read(ValueBits);
                TakeEscape(value);
                return value;
            }

            int folded = (ones << parameter) | reader.Read(parameter);
            short taken = (short)(predictor.Next + Unfold(folded));
            Learn(taken, folded);
            return taken;
        }

        private static void WriteLong(BitWriter writer, int ones, int folded, int rice)
        {
            writer.Write((2 << ones) - 2, ones + 1);
            writer.Write(folded & ((1 << rice) - 1), rice);
        }

        private int PutPresent(int value, BitWriter? writer)
        {
            int folded = Fold(value - predictor.Next);
            int ones = folded >> parameter;
            if (ones >= EscapeOnes)
            {
                return PutEscape(value, writer);
            }

            int bits = ones + 1 + parameter;
            if (writer != null)
            {
                WriteLong(writer, ones, folded, parameter);
            }

            Learn(value, folded);
            return bits;
        }

        private int PutEscape(int value, BitWriter? writer)
        {
            if (writer != null)
            {
                writer.Write((1 << EscapeOnes) - 1, EscapeOnes);
                writer.Write(value & 0xFFFF, ValueBits);
            }

            TakeEscape(value);
            return EscapeOnes + ValueBits;
        }

        private void TakeEscape(int value)
        {
            isMissing = value == SampleSet.Missing;
            if (!isMissing)
            {
                Learn(value, EscapeOnes << parameter);
            }
        }

        // The parameter follows by one a value, so that 2^parameter <= mean < 2 * 2^parameter where errors are even in size.
        private void Learn(int value, int folded)
        {
            int usual = mean >> MeanShift;
            predictor.Learn(value, folded > (JumpTimes * usual) + JumpMore);
            mean += folded - usual;
            int size = mean >> (MeanShift + parameter);
            if (size != 1)
            {
                parameter = Follow(parameter, size);
            }
        }

        private static int Follow(int parameter, int size) =>
            size == 0 ? (parameter > 0 ? parameter - 1 : 0) : parameter < MaxParameter ? parameter + 1 : parameter;

        // 0, -1, 1, -2, 2, ... become 0, 1, 2, 3, 4, ...
        private static int Fold(int error) => (error << 1) ^ (error >> 31);

        private static int Unfold(int folded) => (folded & 1) == 0 ? folded >> 1 : -(folded >> 1) - 1;
    }
}
