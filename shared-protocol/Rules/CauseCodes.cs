namespace LoggerBox.Protocol.Rules
{
    /// <summary>The causes' written codes, as in judgements, indexed by <see cref="Cause"/>.</summary>
    public static class CauseCodes
    {
        public const int Count = 37;

        private static readonly string[] Codes =
        {
            "engine-power-low", "engine-limited-by-control", "governor-low", "governor-high", "governor-droop",
            "work-relief-high", "work-relief-low", "work-hydraulics-loading", "oil-low-or-aerated", "strainer-restricted",
            "pump-worn", "regulator-low", "regulator-high", "modulator-slow", "modulator-harsh", "modulator-low",
            "inching-not-released", "forward-clutch-leak", "reverse-clutch-leak", "both-clutches-leak",
            "forward-feed-open", "reverse-feed-open", "forward-clutch-slip", "reverse-clutch-slip", "selector-not-engaged",
            "drive-input-broken", "stator-slipping", "converter-relief-open", "converter-relief-closed",
            "cooler-restricted", "lube-plug-missing", "pickup-scale", "pressure-zero-shift", "pressure-lines-swapped",
            "gear-tag-wrong", "oil-cold", "air-thin",
        };

        public static string Text(Cause cause) => Codes[(int)cause];

        public static bool TryParse(string text, out Cause cause)
        {
            for (int i = 0; i < Count; i++)
            {
                if (Codes[i] == text)
                {
                    cause = (Cause)i;
                    return true;
                }
            }

            cause = Cause.EnginePowerLow;
            return false;
        }
    }
}
