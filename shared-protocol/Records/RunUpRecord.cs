using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>A burst of full pedal from idle: how long the engine took to reach 90 % of the speed that it then settled at or peaked at.</summary>
    public sealed class RunUpRecord : IRecord
    {
        public long StartMicroseconds;
        public Gear Gear;
        public int FromTenths;
        public int ToTenths;
        public int Milliseconds;

        public RecordCode Code => RecordCode.RunUp;

        public void Write(ByteWriter writer)
        {
            writer.WriteInt64(StartMicroseconds);
            writer.WriteByte((byte)Gear);
            writer.WriteInt32(FromTenths);
            writer.WriteInt32(ToTenths);
            writer.WriteInt32(Milliseconds);
        }

        public bool TryRead(ByteReader reader)
        {
            StartMicroseconds = reader.ReadInt64();
            Gear = WireCode.ReadGear(reader);
            FromTenths = reader.ReadInt32();
            ToTenths = reader.ReadInt32();
            Milliseconds = reader.ReadInt32();
            return !reader.TooShort;
        }
    }
}
