using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: what it reads just now and makes of it. One that is lost is not sent again: the next is newer.</summary>
    public sealed class LiveReadings : IMessage
    {
        /// <summary>When nothing limits a time.</summary>
        public const int NoLimit = -1;

        /// <summary>A session is being recorded; otherwise all below is of the last set that was taken, if any was.</summary>
        public bool Sampling;

        /// <summary>Of the sample set, microseconds since boot.</summary>
        public long Microseconds;

        /// <summary>Tenths of rpm; <see cref="SampleSet.Missing"/> where there is no reading, as in the three below.</summary>
        public int Speed = SampleSet.Missing;

        /// <summary>Loop currents, counts.</summary>
        public short Main = SampleSet.Missing;
        public short Clutch = SampleSet.Missing;
        public short Converter = SampleSet.Missing;

        public Gear Gear;

        /// <summary>The step that the operator named, or that the hold which lasts just now looks like.</summary>
        public Step Step;

        /// <summary>Until the pedal must be let go; <see cref="NoLimit"/> where no stall runs or the plan names no limit.</summary>
        public int StallMillisecondsLeft = NoLimit;

        /// <summary>Of the pause after a stall; 0 where the oil has cooled.</summary>
        public int CooldownMillisecondsLeft;

        /// <summary>The last cue, and when it was given, microseconds since boot.</summary>
        public Cue Cue;
        public long CueMicroseconds;

        /// <summary>Bit n: step n was captured in this session.</summary>
        public uint StepsCaptured;

        private SampleSet? followed;

        public MessageCode Code => MessageCode.LiveReadings;

        /// <summary>From now on the readings are those of this set, whatever it is filled with; nothing is copied while nobody asks.</summary>
        public void Follow(SampleSet sample)
        {
            Sampling = true;
            followed = sample;
        }

        /// <summary>This, with the followed set's readings, if there is one.</summary>
        public LiveReadings Refreshed()
        {
            if (followed != null)
            {
                Microseconds = followed.Microseconds;
                Speed = followed.Values[Channel.Speed];
                Main = (short)followed.Values[Channel.Main];
                Clutch = (short)followed.Values[Channel.Clutch];
                Converter = (short)followed.Values[Channel.Converter];
            }

            return this;
        }

        public void Write(ByteWriter writer)
        {
            Refreshed();
            writer.WriteBoolean(Sampling);
            writer.WriteInt64(Microseconds);
            writer.WriteInt32(Speed);
            writer.WriteInt16(Main);
            writer.WriteInt16(Clutch);
            writer.WriteInt16(Converter);
            writer.WriteByte((byte)Gear);
            writer.WriteByte((byte)Step);
            writer.WriteInt32(StallMillisecondsLeft);
            writer.WriteInt32(CooldownMillisecondsLeft);
            writer.WriteByte((byte)Cue);
            writer.WriteInt64(CueMicroseconds);
            writer.WriteUInt32(StepsCaptured);
        }

        public bool TryRead(ByteReader reader)
        {
            Sampling = reader.ReadBoolean();
            Microseconds = reader.ReadInt64();
            Speed = reader.ReadInt32();
            Main = reader.ReadInt16();
            Clutch = reader.ReadInt16();
            Converter = reader.ReadInt16();
            Gear = WireCode.ReadGear(reader);
            Step = WireCode.ReadStep(reader);
            StallMillisecondsLeft = reader.ReadInt32();
            CooldownMillisecondsLeft = reader.ReadInt32();
            Cue = (Cue)reader.ReadByte();
            CueMicroseconds = reader.ReadInt64();
            StepsCaptured = reader.ReadUInt32();
            return !reader.TooShort;
        }
    }
}
