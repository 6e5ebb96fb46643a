using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>The cheapest check that separates a cause from its neighbours. The truck's manual and the shop's safety rules come first.</summary>
public static class NextChecks
{
    public static string Of(Cause cause) => cause switch
    {
        Cause.EnginePowerLow => "With a helper on the pedal see whether throttle or rack reach their stop; then air cleaner off and test again; then vacuum, compression, spark or injection.",
        Cause.EngineLimitedByControl => "Read the fault lamp and the stored codes first; then see whether throttle or rack reach their stop.",
        Cause.GovernorLow or Cause.GovernorHigh => "Set the no-load governed speed after the manual and read it again with a second tachometer.",
        Cause.GovernorDroop => "Gauge the work hydraulics' relief pressure: if it is right, the governor's droop is wrong.",
        Cause.WorkReliefHigh or Cause.WorkReliefLow => "Gauge the work hydraulics' relief pressure at the test port and compare it with the manual.",
        Cause.WorkHydraulicsLoading => "Gauge the work pump's pressure with all levers in neutral: it should be only the return's few bar; feel for a hot valve or hose.",
        Cause.OilLowOrAerated => "Check level and look for foam at operating temperature; then the suction side for drawn air.",
        Cause.StrainerRestricted => "Pull and look at the suction strainer; main that falls as speed rises and worse when cold points to it.",
        Cause.PumpWorn => "Compare main at idle hot and cold and the converter's inlet with its outlet; then measure the pump's flow at the speed the manual names.",
        Cause.RegulatorLow => "Take out the main regulator's spool and spring and look; then measure pump flow to tell it from a large leak ahead of it.",
        Cause.RegulatorHigh => "Take out the main regulator's spool: it should fall by its own weight when oiled.",
        Cause.ModulatorSlow or Cause.ModulatorHarsh => "Clean and look at the modulator's orifice, piston and spring; bleed the gauge hose and repeat the engagement.",
        Cause.ModulatorLow => "Disconnect the inching link: if clutch pressure stays low, open the modulator.",
        Cause.InchingNotReleased => "Disconnect the inching link: if clutch pressure jumps up, adjust the link.",
        Cause.ForwardClutchLeak => "Regulated shop air, at the manual's pressure, into the forward clutch port with the engine off: listen and compare with the reverse side.",
        Cause.ReverseClutchLeak => "Regulated shop air, at the manual's pressure, into the reverse clutch port with the engine off: listen and compare with the forward side.",
        Cause.BothClutchesLeak => "Read main in N again: normal there clears pump and regulator; then the selector valve's body and gasket.",
        Cause.ForwardFeedOpen => "Shop air into the forward clutch port: air that rushes through without any build-up is an open passage.",
        Cause.ReverseFeedOpen => "Shop air into the reverse clutch port: air that rushes through without any build-up is an open passage.",
        Cause.ForwardClutchSlip => "Chalk tyre and drive shaft: if neither turns in a stall in F the forward clutch slips; if the tyre spins, repeat on better ground.",
        Cause.ReverseClutchSlip => "Chalk tyre and drive shaft: if neither turns in a stall in R the reverse clutch slips; if the tyre spins, repeat on better ground.",
        Cause.SelectorNotEngaged => "See that the lever reaches its detent and moves the spool (or that the solenoid gets voltage) in that direction.",
        Cause.DriveInputBroken => "Look through the housing whether the converter turns with the engine and the input shaft with the converter.",
        Cause.StatorSlipping => "Run-up in N and drop over relief normal clear the engine; a truck that pulls badly from standstill and well at speed confirms the stator.",
        Cause.ConverterReliefOpen => "Compare converter inlet with outlet, and main at idle with the sheet; then look at the converter relief.",
        Cause.ConverterReliefClosed => "Gauge converter inlet and outlet: both high is the cooler or return, inlet alone the relief.",
        Cause.CoolerRestricted => "Measure the pressure drop over the cooler and how long it takes to cool down after a stall.",
        Cause.LubePlugMissing => "Gauge the lubrication port: low there with a good converter relief points to an open drilling.",
        Cause.PickupScale => "Read the engine with a second tachometer at idle and at governed speed; correct the pulses per revolution.",
        Cause.PressureZeroShift => "Exchange two transducers and read again with the engine off: the fault follows the sensor or stays with the line.",
        Cause.PressureLinesSwapped => "Follow each hose from port to transducer with the engine off and pressure gone; repeat idle in N.",
        Cause.GearTagWrong => "Watch the gear display while a helper moves the lever; correct the tag's wiring or the marks.",
        Cause.OilCold => "Warm the oil to the sheet's temperature and repeat the test before anything is opened.",
        _ => "Correct for altitude and intake air (or compare with another truck on the site) before the engine is blamed.",
    };
}
