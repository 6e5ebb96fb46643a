namespace LoggerBox.Host.Report;

/// <summary>The cause codes in words; a code that a newer rule set brings is shown as it is.</summary>
public static class CauseWords
{
    public static string Of(string code) => code switch
    {
        "healthy" => "nothing wrong",
        "engine-power-low" => "engine makes too little torque",
        "engine-limited-by-control" => "a controller holds the engine back",
        "governor-low" => "governor set too low",
        "governor-high" => "governor set too high",
        "governor-droop" => "governor droops too much under load",
        "work-relief-high" => "work hydraulics' relief set too high",
        "work-relief-low" => "work hydraulics' relief set too low",
        "work-hydraulics-loading" => "work hydraulics load the engine when they should not",
        "oil-low-or-aerated" => "transmission oil low or foaming",
        "strainer-restricted" => "suction strainer clogged",
        "pump-worn" => "charge pump worn",
        "regulator-low" => "main regulator stuck open or weak",
        "regulator-high" => "main regulator stuck closed",
        "modulator-slow" => "clutch pressure builds too slowly (modulator)",
        "modulator-harsh" => "clutch pressure builds too fast (modulator)",
        "modulator-low" => "modulator holds clutch pressure down",
        "inching-not-released" => "inching valve not fully released",
        "forward-clutch-leak" => "forward clutch circuit leaks",
        "reverse-clutch-leak" => "reverse clutch circuit leaks",
        "both-clutches-leak" => "selector valve or gasket leaks, both clutches",
        "forward-feed-open" => "forward clutch feed open (plug missing)",
        "reverse-feed-open" => "reverse clutch feed open (plug missing)",
        "forward-clutch-slip" => "forward clutch plates slip",
        "reverse-clutch-slip" => "reverse clutch plates slip",
        "selector-not-engaged" => "selector or its circuit does not engage",
        "drive-input-broken" => "drive plate, input or turbine spline broken",
        "stator-slipping" => "stator one-way clutch slips",
        "converter-relief-open" => "converter relief stuck open",
        "converter-relief-closed" => "converter relief stuck closed",
        "cooler-restricted" => "oil cooler or its return restricted",
        "lube-plug-missing" => "converter or lubrication drilling open",
        _ => MeasuringCause(code) ?? NotVisible(code) ?? code.Replace('-', ' '),
    };

    private static string? MeasuringCause(string code) => code switch
    {
        "pickup-scale" => "pickup: pulses per revolution set wrongly",
        "pressure-zero-shift" => "a pressure channel reads off by a constant",
        "pressure-lines-swapped" => "two pressure lines exchanged",
        "gear-tag-wrong" => "gear tagged wrongly",
        "oil-cold" => "test done with cold oil",
        "air-thin" => "altitude or hot intake air (not a fault)",
        _ => null,
    };

    private static string? NotVisible(string code) => code switch
    {
        "stator-seized" => "stator seized",
        "brake-dragging" => "brake dragging",
        "axle-fault" => "fault in the drive axle",
        "lubrication-starved" => "lubrication starved",
        "clutch-dragging" => "a clutch that drags",
        "wrong-fluid" => "wrong fluid",
        _ => null,
    };
}
