namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// What each cause does to each observation with hot oil, in a circuit where the main regulator's spill feeds the converter:
    /// = normal, - low, _ very low, + high, # very high, l normal or low, h normal or high, L low or very low, H high or very high,
    /// o low but hardly very low, O high but hardly very high, ? low or high, e normal, low or high,
    /// N stays normal, r does not stay normal, u normal or at times low.
    /// A cause with several rows shows itself in several ways. Reasoned from the circuit and from common practice, no published source:
    /// the rules name suspects, the truck's manual prevails.
    /// </summary>
    public static class CauseMatrix
    {
        public const int ObservationCount = 39;

        private static readonly Cause[] Causes =
        {
            Cause.EnginePowerLow, Cause.EnginePowerLow, Cause.EngineLimitedByControl, Cause.EngineLimitedByControl, Cause.GovernorLow, Cause.GovernorHigh, Cause.GovernorDroop,
            Cause.WorkReliefHigh, Cause.WorkReliefLow, Cause.WorkHydraulicsLoading, Cause.OilLowOrAerated, Cause.OilLowOrAerated, Cause.StrainerRestricted, Cause.PumpWorn,
            Cause.RegulatorLow, Cause.RegulatorLow, Cause.RegulatorHigh, Cause.ModulatorSlow, Cause.ModulatorHarsh, Cause.ModulatorLow, Cause.InchingNotReleased,
            Cause.ForwardClutchLeak, Cause.ReverseClutchLeak, Cause.BothClutchesLeak, Cause.ForwardFeedOpen, Cause.ReverseFeedOpen, Cause.ForwardClutchSlip,
            Cause.ReverseClutchSlip, Cause.SelectorNotEngaged, Cause.SelectorNotEngaged, Cause.SelectorNotEngaged, Cause.DriveInputBroken, Cause.DriveInputBroken,
            Cause.StatorSlipping, Cause.ConverterReliefOpen, Cause.ConverterReliefOpen, Cause.ConverterReliefClosed, Cause.ConverterReliefClosed, Cause.CoolerRestricted, Cause.CoolerRestricted, Cause.LubePlugMissing, Cause.LubePlugMissing,
            Cause.OilCold, Cause.AirThin,
        };

        // Idle, governed, drop, run-up | stall F R F:R | main idle NFR, hold NFR | main F:N R:N idle, hold | clutch idle FR, hold FR
        // | clutch F:R, filled F R | converter NFR | F:N R:N | engagement F R F:R | main governed:hold, scatter, converter idle:hold | clutch:main F R
        // | main idle:hold, converter governed:hold
        private static readonly string[] Rows =
        {
            "uuh+" + "--=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "=ohh" + "--=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "=_hh" + "ll=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "=_hh" + "LL=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "=o==" + "ll=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "=O==" + "hh=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "u=+=" + "ll=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "==+=" + "===" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "==L=" + "===" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "lolh" + "--=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "====" + "hh=" + "llllll" + "====" + "llll" + "===" + "ooo" + "==" + "hh=" + "lHl" + "NN" + "hl",
            "====" + "hh=" + "lll---" + "====" + "ll--" + "===" + "LLL" + "==" + "hh=" + "lHl" + "NN" + "hl",
            "====" + "hh=" + "===lll" + "====" + "==ll" + "===" + "LLL" + "==" + "hh=" + "lhh" + "NN" + "hL",
            "====" + "hh=" + "llllll" + "====" + "llll" + "===" + "LLL" + "==" + "hh=" + "hNl" + "NN" + "lu",
            "====" + "hh=" + "lll---" + "====" + "ll--" + "===" + "hhh" + "==" + "hh=" + "=N=" + "NN" + "hN",
            "====" + "hh=" + "lll---" + "====" + "ll--" + "===" + "LLL" + "==" + "hh=" + "=N=" + "NN" + "hN",
            "====" + "===" + "hhhHHH" + "====" + "hhHH" + "===" + "lll" + "==" + "ll=" + "h=l" + "NN" + "l=",
            "====" + "===" + "======" + "====" + "====" + "===" + "===" + "==" + "HH=" + "===" + "==" + "==",
            "====" + "===" + "======" + "====" + "====" + "===" + "===" + "==" + "LL=" + "===" + "==" + "==",
            "====" + "hh=" + "======" + "====" + "llLL" + "===" + "===" + "==" + "hh=" + "===" + "LL" + "==",
            "====" + "hh=" + "======" + "====" + "LLll" + "===" + "===" + "==" + "hh=" + "===" + "LL" + "==",
            "====" + "h=h" + "=l==l=" + "l=l=" + "l=l=" + "l==" + "=L=" + "L=" + "h=h" + "===" + "l=" + "==",
            "====" + "=hl" + "==l==l" + "=l=l" + "=l=l" + "h==" + "==L" + "=L" + "=hl" + "===" + "=l" + "==",
            "====" + "hh=" + "=ll=ll" + "llll" + "llll" + "===" + "=LL" + "LL" + "hh=" + "=N=" + "ll" + "==",
            "====" + "#=#" + "=L==L=" + "L=L=" + "_=_=" + "_L=" + "=_=" + "_=" + "#=#" + "===" + "L=" + "==",
            "====" + "=#_" + "==L==L" + "=L=L" + "=_=_" + "#=L" + "==_" + "=_" + "=#_" + "===" + "=L" + "==",
            "====" + "+=+" + "======" + "====" + "====" + "===" + "===" + "==" + "h=h" + "===" + "==" + "==",
            "====" + "=+-" + "======" + "====" + "====" + "===" + "===" + "==" + "=hl" + "===" + "==" + "==",
            "====" + "#=#" + "======" + "====" + "_=_=" + "__=" + "===" + "==" + "#=#" + "===" + "_=" + "==",
            "====" + "=#_" + "======" + "====" + "=_=_" + "#=_" + "===" + "==" + "=#_" + "===" + "=_" + "==",
            "====" + "##=" + "======" + "====" + "____" + "=__" + "===" + "==" + "##=" + "===" + "__" + "==",
            "====" + "##=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "====" + "##=" + "______" + "????" + "____" + "=__" + "___" + "??" + "##=" + "===" + "??" + "??",
            "====" + "__=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
            "====" + "hh=" + "======" + "====" + "====" + "===" + "LLL" + "==" + "===" + "=Ne" + "NN" + "=u",
            "====" + "hh=" + "uuu===" + "====" + "uu==" + "===" + "LLL" + "==" + "===" + "=Ne" + "NN" + "lu",
            "====" + "===" + "======" + "====" + "====" + "===" + "HHH" + "==" + "===" + "===" + "NN" + "==",
            "====" + "===" + "hhh===" + "====" + "hh==" + "===" + "HHH" + "==" + "===" + "===" + "NN" + "==",
            "====" + "===" + "======" + "====" + "====" + "===" + "+++" + "==" + "===" + "===" + "NN" + "==",
            "====" + "===" + "hhh===" + "====" + "hh==" + "===" + "+++" + "==" + "===" + "===" + "NN" + "==",
            "====" + "hh=" + "uuu===" + "====" + "uu==" + "===" + "LLL" + "==" + "===" + "=Ne" + "NN" + "lu",
            "====" + "hh=" + "======" + "====" + "====" + "===" + "LLL" + "==" + "===" + "=Ne" + "NN" + "lu",
            "==hh" + "ll=" + "hhhhhh" + "====" + "hhhh" + "===" + "hhh" + "==" + "hh=" + "===" + "NN" + "h=",
            "==hh" + "--=" + "======" + "====" + "====" + "===" + "===" + "==" + "===" + "===" + "==" + "==",
        };

        private const string Expectations = "=-_+#lhLHoO?eNru";

        // Hundredths of a natural logarithm: how much likelier this level is under the expectation than in a healthy truck.
        // Columns: very low, low, normal, high, very high.
        private static readonly short[] PointTable =
        {
            0, 0, 0, 0, 0,
            340, 290, -120, -70, 0,
            480, 210, -200, -70, 0,
            0, -70, -120, 290, 340,
            0, -70, -200, 210, 480,
            250, 250, -12, -70, 0,
            0, -70, -12, 250, 250,
            430, 260, -170, -70, 0,
            0, -70, -170, 260, 430,
            100, 290, -120, -70, 0,
            0, -70, -120, 290, 100,
            300, 190, -80, 190, 300,
            250, 250, -12, 250, 250,
            -200, -150, 0, -50, -50,
            0, 0, -170, 0, 0,
            50, 150, -12, -70, 0,
        };

        public static int RowCount => Rows.Length;

        public static Cause CauseOf(int row) => Causes[row];

        /// <summary>The expectation's sign, as in the table above.</summary>
        public static char Expected(int row, Observation observation) => Rows[row][(int)observation];

        /// <summary>Above 0: the level speaks for the row, below 0 against it, 0 for neither.</summary>
        public static int Points(int row, Observation observation, Level level)
        {
            int expectation = Expectations.IndexOf(Expected(row, observation));
            return expectation < 0 ? 0 : PointTable[(expectation * 5) + (int)level];
        }
    }
}
