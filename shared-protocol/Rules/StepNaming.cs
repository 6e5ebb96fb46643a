using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Says which step of the test each hold of a session was. What the operator marked stands; the rest follows from gear, speed, the
    /// way the speed came, and the holds around it. Logger and host use this same code; a step that was marked anywhere is never guessed.
    /// </summary>
    public static class StepNaming
    {
        /// <param name="holds">In order of time.</param>
        /// <param name="count">How many of them.</param>
        /// <param name="plan">The truck's speeds, as far as known.</param>
        /// <param name="names">Takes one step a hold.</param>
        public static void Name(HoldRecord[] holds, int count, PlanRecord plan, Step[] names)
        {
            StepNamer namer = new StepNamer(count);
            namer.Begin(holds, count, plan, names);
            while (!namer.Advance())
            {
            }
        }

        /// <summary>In a direction: by the tag, or where there is no tag by clutch pressure.</summary>
        internal static bool InGear(HoldRecord hold) =>
            hold.Gear == Gear.Forward || hold.Gear == Gear.Reverse || (hold.Gear == Gear.Unknown && hold.ClutchPressed);

        internal static Step InGearStep(Gear gear, Step forward, Step reverse, Step unknown) =>
            gear == Gear.Forward ? forward : gear == Gear.Reverse ? reverse : unknown;
    }
}
