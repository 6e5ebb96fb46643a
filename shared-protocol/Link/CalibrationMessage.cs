using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>What a count of one pressure channel is worth, who says so, and when: on its way to the logger and back from it.</summary>
    public abstract class CalibrationMessage : IMessage
    {
        /// <summary>1 main, 2 clutch, 3 converter (<see cref="Records.Channel"/>).</summary>
        public byte Channel;

        /// <summary>As in <see cref="ChannelCalibration"/>.</summary>
        public ChannelKind Kind;
        public int ZeroCounts;
        public int SpanCounts = 1;
        public int SpanPascal;
        public int AccuracyPascal;

        /// <summary>When it was done, seconds since 1970 UTC; 0: never, these are the logger's own values.</summary>
        public uint UtcSeconds;

        /// <summary>Type and number of the transducer.</summary>
        public string Transducer = "";

        /// <summary>What it was compared with, and its certificate.</summary>
        public string Reference = "";

        public abstract MessageCode Code { get; }

        public void CopyFrom(CalibrationMessage other)
        {
            Channel = other.Channel;
            Kind = other.Kind;
            ZeroCounts = other.ZeroCounts;
            SpanCounts = other.SpanCounts;
            SpanPascal = other.SpanPascal;
            AccuracyPascal = other.AccuracyPascal;
            UtcSeconds = other.UtcSeconds;
            Transducer = other.Transducer;
            Reference = other.Reference;
        }

        public void CopyFrom(ChannelCalibration calibration)
        {
            Kind = calibration.Kind;
            ZeroCounts = calibration.ZeroCounts;
            SpanCounts = calibration.SpanCounts;
            SpanPascal = calibration.SpanPascal;
            AccuracyPascal = calibration.AccuracyPascal;
        }

        public void CopyTo(ChannelCalibration calibration)
        {
            calibration.Kind = Kind;
            calibration.ZeroCounts = ZeroCounts;
            calibration.SpanCounts = SpanCounts;
            calibration.SpanPascal = SpanPascal;
            calibration.AccuracyPascal = AccuracyPascal;
        }

        public void Write(ByteWriter writer)
        {
            writer.WriteByte(Channel);
            writer.WriteByte((byte)Kind);
            writer.WriteInt32(ZeroCounts);
            writer.WriteInt32(SpanCounts);
            writer.WriteInt32(SpanPascal);
            writer.WriteInt32(AccuracyPascal);
            writer.WriteUInt32(UtcSeconds);
            writer.WriteText(Transducer, RecordFormat.TextWidth);
            writer.WriteText(Reference, RecordFormat.TextWidth);
        }

        public bool TryRead(ByteReader reader)
        {
            Channel = reader.ReadByte();
            Kind = (ChannelKind)reader.ReadByte();
            ZeroCounts = reader.ReadInt32();
            SpanCounts = reader.ReadInt32();
            SpanPascal = reader.ReadInt32();
            AccuracyPascal = reader.ReadInt32();
            UtcSeconds = reader.ReadUInt32();
            Transducer = reader.ReadText(RecordFormat.TextWidth);
            Reference = reader.ReadText(RecordFormat.TextWidth);

            // A span of no counts is no calibration, and everyone divides by it.
            return !reader.TooShort && SpanCounts != 0;
        }
    }
}
