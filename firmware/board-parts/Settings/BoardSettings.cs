using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.BoardParts.Settings
{
    /// <summary>Configuration and calibration of one logger, as they stand in internal flash.</summary>
    public sealed class BoardSettings
    {
        private const byte Version = 1;
        private const uint ShortestIntervalMicroseconds = 10000;
        private const uint LongestIntervalMicroseconds = 100000;

        public uint LoggerId;

        /// <summary>How often the logger has started.</summary>
        public ushort BootCount;

        /// <summary>Time between sample sets, microseconds.</summary>
        public uint SampleIntervalMicroseconds = 20000;

        public bool HasGearInput = true;

        /// <summary>The plan that was chosen last; 0: none.</summary>
        public byte PlanNumber;

        /// <summary>Why the program restarted the board last, and which thread it was; 0: it did not.</summary>
        public byte RestartReason;
        public byte RestartThread;

        /// <summary>Main, clutch, converter.</summary>
        public readonly CalibrationAnswer[] Pressures = { new CalibrationAnswer(), new CalibrationAnswer(), new CalibrationAnswer() };

        public void Write(ByteWriter writer)
        {
            writer.WriteByte(Version);
            writer.WriteUInt32(LoggerId);
            writer.WriteUInt16(BootCount);
            writer.WriteUInt32(SampleIntervalMicroseconds);
            writer.WriteBoolean(HasGearInput);
            writer.WriteByte(PlanNumber);
            writer.WriteByte(RestartReason);
            writer.WriteByte(RestartThread);
            for (int i = 0; i < Pressures.Length; i++)
            {
                Pressures[i].Write(writer);
            }
        }

        /// <summary>False, and defaults without a calibration, where the content is of another version or cannot be.</summary>
        public bool TryRead(ByteReader reader)
        {
            bool sound = reader.ReadByte() == Version;
            LoggerId = reader.ReadUInt32();
            BootCount = reader.ReadUInt16();
            SampleIntervalMicroseconds = reader.ReadUInt32();
            HasGearInput = reader.ReadBoolean();
            PlanNumber = reader.ReadByte();
            RestartReason = reader.ReadByte();
            RestartThread = reader.ReadByte();
            for (int i = 0; i < Pressures.Length; i++)
            {
                sound &= Pressures[i].TryRead(reader) && Pressures[i].Channel == i + 1;
            }

            sound &= !reader.TooShort && SampleIntervalMicroseconds >= ShortestIntervalMicroseconds && SampleIntervalMicroseconds <= LongestIntervalMicroseconds;
            if (!sound)
            {
                Reset();
            }

            return sound;
        }

        /// <summary>A logger that knows nothing of itself: it records currents, and says that it has no calibration.</summary>
        public void Reset()
        {
            LoggerId = 0;
            BootCount = 0;
            SampleIntervalMicroseconds = 20000;
            HasGearInput = true;
            PlanNumber = 0;
            RestartReason = 0;
            RestartThread = 0;
            for (int i = 0; i < Pressures.Length; i++)
            {
                // Counts are stored all the same; but nobody can take them for a pressure.
                Pressures[i].Channel = (byte)(i + 1);
                Pressures[i].Kind = ChannelKind.None;
                Pressures[i].ZeroCounts = 0;
                Pressures[i].SpanCounts = 1;
                Pressures[i].SpanPascal = 0;
                Pressures[i].AccuracyPascal = 0;
                Pressures[i].UtcSeconds = 0;
                Pressures[i].Transducer = "";
                Pressures[i].Reference = "";
            }
        }
    }
}
