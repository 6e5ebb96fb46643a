using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>A burst of full pedal from idle: how long the engine took to reach 90 % of the speed that it then settled at or peaked at.</summary>
    public sealed class RunUpRecord
    {
        public long StartMicroseconds;
        public Gear Gear;
        public int FromTenths;
        public int ToTenths;
        public int Milliseconds;
    }
}
