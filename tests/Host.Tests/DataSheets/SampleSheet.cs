namespace LoggerBox.Host.Tests.DataSheets;

/// <summary>A sheet with every key; the truck and its figures are invented.</summary>
internal static class SampleSheet
{
    public const string Full = """
        [truck]
        name = "Sample truck"
        source = "invented, typed by A, checked by B"

        [engine]
        fuel            = "LPG"
        idle_rpm        = { min = 640, max = 760 }
        governed_rpm    = { nominal = 2450, tolerance = 60 }
        relief_drop_rpm = { min = 90, max = 260 }
        stall_rpm       = { nominal = 1940, below = 100, above = 140 }
        run_up_s        = { max = 1.4 }

        [engine.LPG]
        stall_reverse_rpm = { nominal = 1900, tolerance_percent = 5 }

        [engine.petrol]
        governed_rpm = { nominal = 2500, tolerance = 50 }

        [pressure]
        unit = "kPa"
        [pressure.idle]
        main   = { min = 230, max = 560 }
        clutch = { min = 180, max = 560 }
        [pressure.hold]
        rpm = 1800
        window_rpm = 60
        main = { min = 940, max = 1240, also = { unit = "psi", min = 136, max = 180 } }
        clutch = { min = 900, max = 1240 }
        converter = { min = 150 }
        [pressure.hold.forward]
        clutch = { min = 910, max = 1230 }
        [pressure.hold.neutral]
        converter = { reference = 400 }
        [pressure.stall]
        main = { max = 1300 }
        [pressure.stall.reverse]
        main = { max = 1400 }
        [[pressure.at]]
        rpm = 1500
        main = { min = 900 }
        clutch = { min = 850 }
        [[pressure.at]]
        rpm = 1000
        converter = { min = 90 }
        clutch.forward = { min = 700 }
        clutch.reverse = { min = 690 }

        [engagement]
        time_s = { min = 0.35, max = 2.0 }

        [difference]
        clutch_forward_reverse = { max = 5 }
        [oil]
        temperature_c = { min = 71, max = 93 }
        [stall]
        limit_s = 5
        cooldown_s = 90
        reverse_allowed = false
        [pickup]
        pulses_per_rev = 0.5
        [site]
        altitude_m = 420
        air_c = 18.5
        [ports]
        clutch = "per-gear"
        converter = "out"
        """;
}
