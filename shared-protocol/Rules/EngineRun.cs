using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>The holds between two stops of the engine: mostly one set-up of the truck.</summary>
    internal static class EngineRun
    {
        /// <summary>The run's first hold, from any one of it.</summary>
        public static int First(HoldRecord[] holds, int i)
        {
            while (i > 0 && !SpeedScale.IsStopped(holds[i - 1]))
            {
                i--;
            }

            return i;
        }

        /// <summary>The one after the run's last hold.</summary>
        public static int End(HoldRecord[] holds, int count, int i)
        {
            do
            {
                i++;
            }
            while (i < count && !SpeedScale.IsStopped(holds[i]));
            return i;
        }

        public static bool Has(Step[] names, int from, int to, Step one, Step other)
        {
            for (int i = from; i < to; i++)
            {
                if (names[i] == one || names[i] == other)
                {
                    return true;
                }
            }

            return false;
        }
    }
}
