namespace LoggerBox.Protocol.Rules
{
    /// <summary>The causes' written codes, as in judgements, indexed by <see cref="Cause"/>, and what each means.</summary>
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

        private static readonly string[] Meanings =
        {
            "the engine makes too little torque (air, fuel, spark, throttle not opening fully)",
            "a controller holds the engine back",
            "no-load governed speed is set too low",
            "no-load governed speed is set too high",
            "governed speed is right, but it drops too far under load: the governor needs adjustment",
            "the work hydraulics' relief is set high: they load the engine too much",
            "the work hydraulics' relief is set low: they load the engine too little",
            "the work hydraulics load the engine when they should not",
            "transmission oil is low, foaming or drawing air",
            "the suction strainer is clogged",
            "the charge pump is worn",
            "the main regulator is stuck open or its spring is weak",
            "the main regulator is stuck closed",
            "clutch pressure builds too slowly",
            "clutch pressure builds too fast",
            "the modulator holds clutch pressure down in both gears",
            "the inching valve is not fully released",
            "seal rings, piston or passage of the forward clutch leak",
            "seal rings, piston or passage of the reverse clutch leak",
            "the selector valve or a gasket common to both clutches leaks",
            "a plug of the forward clutch's feed passage is missing",
            "a plug of the reverse clutch's feed passage is missing",
            "the forward clutch slips at normal pressure: plates worn or glazed",
            "the reverse clutch slips at normal pressure: plates worn or glazed",
            "the lever, the selector or the direction circuit does not engage",
            "the drive plate or the input or turbine spline is broken",
            "the stator's one-way clutch slips",
            "the converter relief is stuck open",
            "the converter relief is stuck closed",
            "the cooler or the return line is restricted",
            "a converter or lubrication drilling is open",
            "the pulses per revolution are set wrongly",
            "a pressure channel reads off by a constant",
            "two pressure lines are exchanged",
            "the gear is tagged wrongly",
            "the test was done before warm-up",
            "altitude or hot intake air: not a fault",
        };

        public static string Text(Cause cause) => Codes[(int)cause];

        public static string Meaning(Cause cause) => Meanings[(int)cause];

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
