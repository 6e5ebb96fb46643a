using LoggerBox.Capture.Speed;
using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Pickups from half a pulse to 150 pulses a revolution, steady, lost and doubled edges, and an engine that stops.</summary>
    internal sealed class SpeedCase : SelfTestCase
    {
        private const int PollMicroseconds = 10000;

        private readonly Noise noise = new Noise(23);

        public SpeedCase()
            : base("speed")
        {
        }

        public override void Execute()
        {
            int[] pulses = { 1, 1, 2, 4, 36, 60, 135, 150 };
            int[] revolutions = { 2, 1, 1, 1, 1, 1, 1, 1 };
            for (int i = 0; i < pulses.Length; i++)
            {
                for (int tenths = 3000; tenths <= 30000; tenths += 9000)
                {
                    Run(pulses[i], revolutions[i], tenths, 0);
                    Run(pulses[i], revolutions[i], tenths, 600);
                }
            }
        }

        /// <param name="faults">Of 65536 pulses, how many are lost, and how many doubled.</param>
        private void Run(int pulses, int revolutions, int tenths, int faults)
        {
            PulseSpeed speed = new PulseSpeed(pulses, revolutions);
            long phase = 0;
            long counted = 0;
            long seen = 0;
            long now = 0;
            int read = 0;
            for (int poll = 0; poll < 400; poll++)
            {
                now += PollMicroseconds + (noise.Next() % 400) - 200;
                phase = now * tenths * pulses / revolutions;
                for (; counted < phase / 600000000; counted++)
                {
                    int chance = faults == 0 ? 65535 : noise.Next();
                    seen += chance < faults ? 0 : chance < 2 * faults ? 2 : 1;
                }

                speed.Poll(seen, now);
                read = speed.ReadTenths(now);
                Digest.AddNumber(read);
            }

            Expect(faults > 0 || (read > tenths - (tenths / 50) && read < tenths + (tenths / 50)), "another speed was read: " + read.ToString());
            for (int poll = 0; poll < 400; poll++)
            {
                now += PollMicroseconds;
                speed.Poll(seen, now);
                read = speed.ReadTenths(now);
                Digest.AddNumber(read);
            }

            ExpectNumber(0, read, "a stopped engine");
            Digest.AddNumber(SampleSet.Missing);
        }
    }
}
