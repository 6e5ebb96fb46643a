namespace LoggerBox.Protocol.Framing
{
    /// <summary>
    /// Consistent overhead byte stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2), 1999), every byte then
    /// exclusive-ored with the delimiter, so that the delimiter itself is what no stuffed byte can be.
    /// </summary>
    public static class Cobs
    {
        /// <summary>Data bytes that one code byte can stand for.</summary>
        public const int LongestRun = 254;

        /// <summary>Bytes that stuffing can make of so many: one code byte, and one more for each full run.</summary>
        public static int LongestEncoding(int count) => count + 1 + count / LongestRun;

        /// <summary>Stuffs a range without writing a delimiter. Returns the number of bytes written.</summary>
        public static int Encode(byte[] source, int offset, int count, byte[] target, int targetOffset, byte delimiter)
        {
            int end = offset + count;
            int codeAt = targetOffset;
            int write = targetOffset + 1;
            int code = 1;
            for (int read = offset; read < end; read++)
            {
                byte value = source[read];
                if (value != 0)
                {
                    target[write++] = (byte)(value ^ delimiter);
                    code++;
                }

                // A full run at the very end needs no code byte after it.
                if (value == 0 || (code == LongestRun + 1 && read + 1 < end))
                {
                    target[codeAt] = (byte)(code ^ delimiter);
                    codeAt = write++;
                    code = 1;
                }
            }

            target[codeAt] = (byte)(code ^ delimiter);
            return write - targetOffset;
        }
    }
}
