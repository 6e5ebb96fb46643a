using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>A stretch in which speed and pressures stood still: the fact that is judged.</summary>
    public sealed class HoldRecord
    {
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
    }
}
