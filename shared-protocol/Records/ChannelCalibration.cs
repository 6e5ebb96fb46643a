namespace LoggerBox.Protocol.Records
{
    /// <summary>
    /// What a count of one pressure channel is worth: pascal = (counts - ZeroCounts) * SpanPascal / SpanCounts.
    /// It travels in the session header; samples stay in counts for ever.
    /// </summary>
    public sealed class ChannelCalibration
    {
        public ChannelKind Kind;
        public int ZeroCounts;
        public int SpanCounts = 1;
        public int SpanPascal;

        /// <summary>Half-width of the instrument's stated error, pascal; 0 where none is stated.</summary>
        public int AccuracyPascal;

        public int PascalFromCounts(int counts) => (int)((long)(counts - ZeroCounts) * SpanPascal / SpanCounts);

        public void Write(ByteWriter writer)
        {
            writer.WriteByte((byte)Kind);
            writer.WriteInt32(ZeroCounts);
            writer.WriteInt32(SpanCounts);
            writer.WriteInt32(SpanPascal);
            writer.WriteInt32(AccuracyPascal);
        }

        public bool TryRead(ByteReader reader)
        {
            Kind = (ChannelKind)reader.ReadByte();
            ZeroCounts = reader.ReadInt32();
            SpanCounts = reader.ReadInt32();
            SpanPascal = reader.ReadInt32();
            AccuracyPascal = reader.ReadInt32();

            // A span of no counts is no calibration, and everyone divides by it.
            return !reader.TooShort && SpanCounts != 0;
        }
    }

    public enum ChannelKind : byte
    {
        /// <summary>Nothing is connected.</summary>
        None = 0,

        /// <summary>A 4-20 mA loop: currents outside the NE 43 band are a fault, not a pressure.</summary>
        CurrentLoop = 1,

        /// <summary>A pressure that another instrument recorded: counts carry the pressure alone.</summary>
        RecordedPressure = 2,
    }
}
