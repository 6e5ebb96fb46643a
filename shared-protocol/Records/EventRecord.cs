namespace LoggerBox.Protocol.Records
{
    /// <summary>Something that happened at one moment.</summary>
    public sealed class EventRecord : IRecord
    {
        public long Microseconds;
        public EventKind Kind;

        /// <summary>Meaning by kind; see PROTOCOL.md.</summary>
        public int Value;

        public RecordCode Code => RecordCode.Event;

        /// <summary>The value of a kind that tells two things.</summary>
        public static int Pair(int first, int second) => (first * 256) + second;

        public void Write(ByteWriter writer)
        {
            writer.WriteInt64(Microseconds);
            writer.WriteByte((byte)Kind);
            writer.WriteInt32(Value);
        }

        public bool TryRead(ByteReader reader)
        {
            Microseconds = reader.ReadInt64();
            Kind = (EventKind)reader.ReadByte();
            Value = reader.ReadInt32();
            return !reader.TooShort;
        }
    }

    public enum EventKind : byte
    {
        /// <summary>Value: <see cref="Rules.Gear"/> as tagged from here on.</summary>
        GearTag = 1,

        /// <summary>Value: <see cref="Rules.Step"/> that the operator says it is from here on; None ends it.</summary>
        StepMark = 2,

        /// <summary>Value: 1 short, 2 long.</summary>
        Button = 3,

        /// <summary>Value: <see cref="Rules.Cue"/> given to the operator.</summary>
        Cue = 4,

        /// <summary>Value: oil temperature in tenths of a degree Celsius.</summary>
        OilTemperature = 5,

        EngineStarted = 6,
        EngineStopped = 7,

        /// <summary>Value: channel * 256 + <see cref="Records.LoopState"/>.</summary>
        LoopState = 8,

        /// <summary>Full pedal in gear without clutch pressure: an inching valve or an interlock cuts the drive. Value: gear.</summary>
        DriveCut = 9,

        /// <summary>A run-up in gear that was given up before it settled. Value: gear.</summary>
        StallGivenUp = 10,

        /// <summary>Value: <see cref="BoardFault"/> * 256 + detail; detail 0: it works again.</summary>
        BoardFault = 11,

        /// <summary>Value: <see cref="RestartReason"/> * 256 + thread.</summary>
        Restart = 12,

        /// <summary>Value: 1 the operator says that the drive wheels are clear, 2 that the truck is down and chocked.</summary>
        SetUp = 13,
    }
}
