using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>A stretch in which speed and pressures stood still: the fact that is judged.</summary>
    public sealed class HoldRecord : IPartedRecord
    {
        private const int ReadingsAPart = 2;

        /// <summary>Where the settled part begins and how long it lasts.</summary>
        public long StartMicroseconds;
        public int DurationMilliseconds;

        public Gear Gear;

        /// <summary>What the logger took it for when it ended. A judgement may name it again from the whole session.</summary>
        public Step Step;

        /// <summary>The operator marked the step: it is what he says, not what was recognised.</summary>
        public bool Marked;

        /// <summary>Clutch pressure stood above a few counts of its engine-off level: a gear is engaged whatever the tag says.</summary>
        public bool ClutchPressed;

        /// <summary>
        /// How the speed came here: where it stood before the change that led to this hold (tenths of rpm) and how long the way took.
        /// 0 ms: the speed did not change, only the gear or a pressure did.
        /// </summary>
        public int ApproachFromTenths;
        public int ApproachMilliseconds;

        /// <summary>Indexed by <see cref="Channel"/>.</summary>
        public readonly HoldReading[] Readings = { new HoldReading(), new HoldReading(), new HoldReading(), new HoldReading() };

        /// <summary>Channels, a bit each, that went on in one direction from end to end: not enough to be no hold, too much to be steady.</summary>
        public byte Drifting;

        private int part;

        public RecordCode Code => RecordCode.Hold;

        public bool IsNearlyWritten => false;

        public int PartsLeft => (Channel.Count / ReadingsAPart) - part;

        public bool Drifts(int channel) => (Drifting >> channel & 1) != 0;

        public void CopyFrom(HoldRecord other)
        {
            StartMicroseconds = other.StartMicroseconds;
            DurationMilliseconds = other.DurationMilliseconds;
            Gear = other.Gear;
            Step = other.Step;
            Marked = other.Marked;
            ClutchPressed = other.ClutchPressed;
            ApproachFromTenths = other.ApproachFromTenths;
            ApproachMilliseconds = other.ApproachMilliseconds;
            Drifting = other.Drifting;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                Readings[channel].CopyFrom(other.Readings[channel]);
            }
        }

        public void Write(ByteWriter writer)
        {
            BeginWriting();
            while (!WritePart(writer))
            {
            }
        }

        public void BeginWriting() => part = 0;

        public bool WritePart(ByteWriter writer)
        {
            if (part == 0)
            {
                WriteHead(writer);
            }

            for (int channel = part * ReadingsAPart; channel < (part + 1) * ReadingsAPart; channel++)
            {
                Readings[channel].Write(writer);
            }

            part++;
            bool isLast = part * ReadingsAPart == Channel.Count;

            // Came later than the rest, so it stands last, and only where it says something: other records keep the bytes that they had.
            if (isLast && Drifting != 0)
            {
                writer.WriteByte(Drifting);
            }

            return isLast;
        }

        public bool TryRead(ByteReader reader)
        {
            StartMicroseconds = reader.ReadInt64();
            DurationMilliseconds = reader.ReadInt32();
            Gear = WireCode.ReadGear(reader);
            Step = WireCode.ReadStep(reader);
            Marked = reader.ReadBoolean();
            ClutchPressed = reader.ReadBoolean();
            ApproachFromTenths = reader.ReadInt32();
            ApproachMilliseconds = reader.ReadInt32();
            bool sound = !reader.TooShort;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sound &= Readings[channel].TryRead(reader);
            }

            Drifting = sound && reader.Remaining > 0 ? reader.ReadByte() : (byte)0;
            return sound;
        }

        private void WriteHead(ByteWriter writer)
        {
            writer.WriteInt64(StartMicroseconds);
            writer.WriteInt32(DurationMilliseconds);
            writer.WriteByte((byte)Gear);
            writer.WriteByte((byte)Step);
            writer.WriteBoolean(Marked);
            writer.WriteBoolean(ClutchPressed);
            writer.WriteInt32(ApproachFromTenths);
            writer.WriteInt32(ApproachMilliseconds);
        }
    }
}
