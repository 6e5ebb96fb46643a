using LoggerBox.Protocol.Framing;

namespace LoggerBox.SelfTest
{
    /// <summary>A CRC-32 over all that a case produced: two runs that differ anywhere differ here.</summary>
    internal sealed class Digest
    {
        /// <summary>Records among it.</summary>
        public int Records;

        private readonly byte[] number = new byte[8];

        public uint Value { get; private set; } = Crc32.Start;

        public string Text => Value.ToString("X8");

        public void Add(byte[] bytes, int offset, int count) => Value = Crc32.Append(Value, bytes, offset, count);

        public void AddNumber(long value)
        {
            for (int i = 0; i < number.Length; i++)
            {
                number[i] = (byte)(value >> (8 * i));
            }

            Add(number, 0, number.Length);
        }

        public void AddText(string text)
        {
            // Not one by one out of the string: the platform does not give the second half of a pair then.
            char[] characters = text.ToCharArray();
            for (int i = 0; i < characters.Length; i++)
            {
                AddNumber(characters[i]);
            }
        }
    }
}
