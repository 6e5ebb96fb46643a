namespace LoggerBox.Protocol.Records
{
    /// <summary>Texts of the wire. The logger's core library has no encodings.</summary>
    internal static class Utf8
    {
        private const char Replacement = '\uFFFD';

        /// <summary>Fills the field: as many whole characters as fit, then zeros.</summary>
        public static void Write(string text, byte[] target, int offset, int width)
        {
            int at = offset;
            int end = offset + width;

            // The platform's string gives the first half of a pair for its second half, too, when it is asked one character at a time.
            char[] characters = text.ToCharArray();
            for (int i = 0; i < characters.Length; i++)
            {
                int scalar = ScalarAt(characters, i);
                if (scalar > 0xFFFF)
                {
                    i++;
                }

                int length = EncodedLength(scalar);
                if (scalar == 0 || at + length > end)
                {
                    break;
                }

                WriteScalar(scalar, length, target, at);
                at += length;
            }

            System.Array.Clear(target, at, end - at);
        }

        public static string Read(byte[] source, int offset, int width)
        {
            char[] characters = new char[width];
            int count = 0;
            int end = offset + width;
            int at = offset;
            while (at < end && source[at] != 0)
            {
                int scalar = ReadScalar(source, at, end, out int length);
                at += length;
                if (scalar > 0xFFFF)
                {
                    characters[count++] = (char)(0xD800 + ((scalar - 0x10000) >> 10));
                    characters[count++] = (char)(0xDC00 + ((scalar - 0x10000) & 0x3FF));
                }
                else
                {
                    characters[count++] = (char)scalar;
                }
            }

            return new string(characters, 0, count);
        }

        private static int ScalarAt(char[] text, int index)
        {
            char first = text[index];
            if (first < 0xD800 || first > 0xDFFF)
            {
                return first;
            }

            bool paired = first < 0xDC00 && index + 1 < text.Length && text[index + 1] >= 0xDC00 && text[index + 1] <= 0xDFFF;
            return paired ? 0x10000 + ((first - 0xD800) << 10) + (text[index + 1] - 0xDC00) : Replacement;
        }

        private static int EncodedLength(int scalar) => scalar < 0x80 ? 1 : scalar < 0x800 ? 2 : scalar < 0x10000 ? 3 : 4;

        private static void WriteScalar(int scalar, int length, byte[] target, int at)
        {
            if (length == 1)
            {
                target[at] = (byte)scalar;
                return;
            }

            for (int i = length - 1; i > 0; i--)
            {
                target[at + i] = (byte)(0x80 | (scalar & 0x3F));
                scalar >>= 6;
            }

            target[at] = (byte)((0xF00 >> length) | scalar);
        }

        private static int ReadScalar(byte[] source, int at, int end, out int length)
        {
            int lead = source[at];
            length = 1;
            if (lead < 0x80)
            {
                return lead;
            }

            int wanted = lead >= 0xC2 && lead < 0xE0 ? 2 : lead >= 0xE0 && lead < 0xF0 ? 3 : lead >= 0xF0 && lead < 0xF5 ? 4 : 0;
            if (wanted == 0 || at + wanted > end)
            {
                return Replacement;
            }

            int scalar = lead & (0x7F >> wanted);
            for (int i = 1; i < wanted; i++)
            {
                if ((source[at + i] & 0xC0) != 0x80)
                {
                    return Replacement;
                }

                scalar = (scalar << 6) | (source[at + i] & 0x3F);
            }

            // Overlong forms, surrogates and values past the last plane are no characters.
            if (EncodedLength(scalar) != wanted || (scalar >= 0xD800 && scalar <= 0xDFFF) || scalar > 0x10FFFF)
            {
                return Replacement;
            }

            length = wanted;
            return scalar;
        }
    }
}
