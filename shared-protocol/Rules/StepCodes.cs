namespace LoggerBox.Protocol.Rules
{
    /// <summary>The steps' written codes, as in trace files and judgements, indexed by <see cref="Step"/>.</summary>
    public static class StepCodes
    {
        private static readonly string[] Texts =
        {
            "", "zero", "idle-N", "idle-F", "idle-R", "governed", "relief", "stall-F", "stall-R",
            "hold-N", "hold-F", "hold-R", "idle", "stall", "hold",
        };

        public static string Text(Step step) => Texts[(int)step];

        /// <summary>The gear that a step is done in; Unknown where its name leaves that open.</summary>
        public static Gear GearOf(Step step)
        {
            switch (step)
            {
                case Step.IdleNeutral:
                case Step.HoldNeutral:
                case Step.Governed:
                case Step.Relief:
                    return Gear.Neutral;
                case Step.IdleForward:
                case Step.HoldForward:
                case Step.StallForward:
                    return Gear.Forward;
                case Step.IdleReverse:
                case Step.HoldReverse:
                case Step.StallReverse:
                    return Gear.Reverse;
                default:
                    return Gear.Unknown;
            }
        }

        public static bool TryParse(string text, out Step step)
        {
            for (int i = 0; i < Texts.Length; i++)
            {
                if (Texts[i] == text)
                {
                    step = (Step)i;
                    return true;
                }
            }

            step = Step.None;
            return false;
        }
    }
}
