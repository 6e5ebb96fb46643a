using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>Codes that a later version may have added read as "not known": they index tables.</summary>
    internal static class WireCode
    {
        public static Gear ReadGear(ByteReader reader)
        {
            byte code = reader.ReadByte();
            return code <= (byte)Gear.Reverse ? (Gear)code : Gear.Unknown;
        }

        public static Step ReadStep(ByteReader reader)
        {
            byte code = reader.ReadByte();
            return code <= (byte)Step.HoldInGear ? (Step)code : Step.None;
        }
    }
}
