namespace LoggerBox.SelfTest
{
    /// <summary>Numbers that look random and are the same everywhere (the generator of Numerical Recipes, 32 bits).</summary>
    internal sealed class Noise
    {
        private uint state;

        public Noise(uint seed)
        {
            state = seed;
        }

        /// <summary>0 to 65535.</summary>
        public int Next()
        {
            state = (state * 1664525u) + 1013904223u;
            return (int)(state >> 16);
        }

        /// <summary>Sum of three even ones: bell-shaped enough, from -3 to 3 times the size, standard deviation as large as the size.</summary>
        public int Bell(int size) => size * (Next() + Next() + Next() - 98304) / 32768;

        public void Fill(byte[] bytes, int count, int mask)
        {
            for (int i = 0; i < count; i++)
            {
                bytes[i] = (byte)(Next() & mask);
            }
        }
    }
}
