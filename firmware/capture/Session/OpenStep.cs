using LoggerBox.Capture.Holds;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Session
{
    /// <summary>Which step the hold looks like that lasts just now; nothing is recorded of it.</summary>
    public sealed class OpenStep
    {
        private readonly HoldRecord _soFar = new HoldRecord();

        /// <summary>The hold is to be named as if it ended here.</summary>
        /// <param name="seconds">How long it has lasted.</param>
        public void Recognise(HoldFinder holds, SessionHolds session, int seconds, Gear gear, Step mark)
        {
            _soFar.DurationMilliseconds = seconds * 1000;
            _soFar.ApproachFromTenths = holds.ApproachFromTenths;
            _soFar.ApproachMilliseconds = holds.ApproachMilliseconds;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                HoldReading reading = _soFar.Readings[channel];
                reading.Present = holds.HasLatest(channel);
                reading.SettledHundredths = reading.Present ? (int)holds.LatestHundredths(channel) : 0;
                reading.Peak = reading.SettledHundredths / 100;
                reading.Lowest = reading.Peak;
            }

            session.Look(_soFar, gear, mark);
        }
    }
}
