using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Calibrating;
using LoggerBox.Host.Units;

namespace LoggerBox.App;

/// <summary>What a user meets while a logger is calibrated.</summary>
internal static class CalibrateMessages
{
    public const string Verb = "Zero and span of the pressure channels against a reference gauge, step by step, stored on the logger; --show tells what it holds.";
    public const string ShowOption = "Only show what the logger holds now.";
    public const string ChannelOption = "A channel to calibrate (main, clutch, converter), once for each; without it all three, one after the other.";
    public const string AtOption = "A pressure to set, zero first, then upwards (0, 100psi, 450psi), once for each; without it 0, 20 % and 90 % of the range.";
    public const string ReferenceOption = "The dead-weight tester or master gauge, with its number.";
    public const string CertificateOption = "Number of the reference's certificate.";
    public const string CertifiedOption = "Day of the certificate.";
    public const string ReferenceDueOption = "Day until which the certificate is good.";
    public const string DueOption = "Day on which the channels are due again; without it in a year.";
    public const string ByOption = "Who calibrates.";
    public const string TransducerOption = "Type and number of a channel's transducer, as main=TX-5 no. 12; without it what the logger holds.";
    public const string RangeOption = "Range of a channel's transducer from 4 to 20 mA, as main=0..500psi; without it what the logger holds.";
    public const string ClassOption = "The transducers' class: largest error in percent of the range; without it the error that the logger holds.";
    public const string PatienceOption = "How long to wait for each pressure.";
    public const string YesOption = "Ask nothing: each pressure is waited for, and the calibration stored.";
    public const string BenchOption = "The transducers hang on a bench pump in place of the truck; FILE holds its pressure (as 400psi) and may be written anew at any time.";

    public const string OnTheBench = "The transducers hang on the bench; the logger records until it is stopped. Ctrl-C ends it.";
    public const string YesWithoutTerminal = "calibrate asks before it stores, and here is nobody to answer: run it on a terminal, or give --yes.";
    public const string JsonWithShow = "--json goes with --show";
    public const string Store = "Store this on the logger? yes/no: ";
    public const string Left = "Nothing was stored: the logger holds what it held before.";

    public const string Caution =
        "CAUTION. Engine off. Hydraulic pressure at the bench cuts and blinds: eye protection, hands away from fittings under pressure, never feel for a leak. "
        + "Hoses and fittings rated for the highest pressure; pressure off before one is opened. Hot oil burns.";

    public static string WantsDay(string option) => $"{option} wants a day as 2026-03-31";

    public static string DayToCome(string option) => $"{option} names a day that is still to come: write the one that the certificate prints.";

    public static string DayGone(string option) => $"{option} names a day that is gone: the channels are due again later than today.";

    public static string WantsPressure(string word) => $"'{word}' is no pressure: write 0, or a number with psi, kPa, bar or kgfcm2, as 400psi.";

    public static string WantsChannel(string option, string word) => $"{option} wants CHANNEL=TEXT with main, clutch or converter before the equals sign, once for each, not '{word}'.";

    public static string WantsWords(IEnumerable<string> options) => $"calibrate needs {string.Join(", ", options)}: give them, or run it on a terminal, where it asks for what is missing.";

    public static string NoBench(string path) => $"{path} says no pressure (as 400psi): write one before the bench is started.";

    public static string ReferenceOverdue(string reference, string day) =>
        $"The certificate of {reference} was good until {day}: what is compared with it proves nothing. Nothing was stored; use a reference with a valid certificate.";

    public static string TooLong(string what, int most) => $"The logger keeps {most} bytes for {what}: nothing was stored; write it shorter.";

    public static string NoRange(string channel) => $"The logger holds no range for {channel}: name the transducer's with --range {channel}=0..500psi.";

    public static string BadPressures(string channel, string why, string range) =>
        $"These pressures make no calibration of {channel} ({why}; its range is {range}): nothing was stored; name others with --at.";

    public static string Step(string channel, string pressure) => $"{channel}: waiting for {pressure} on the reference";

    public static string ZeroStep(string channel) => $"{channel}: waiting for zero: engine off, pressure gone, hose open to air";

    public static string PressEnter(string channel, string pressure) => $"{channel}: bring the reference up to {pressure}, from below, and let it settle. Enter when it stands, q to leave: ";

    public static string PressEnterAtZero(string channel) => $"{channel}: engine off, pressure gone, hose open to air. Enter when it is so, q to leave: ";

    public static string Read(string channel, string pressure, double counts) => FormattableString.Invariant($"{channel}: {pressure} reads {counts / 800:F3} mA");

    public static string NotSampling(string port) => $"The logger on {port} is not recording, so it tells no current: begin a session with its button, engine off, and calibrate again. Nothing was stored.";

    public static string EngineTurns(double rpm) => $"The engine turns ({rpm:F0} rpm): nothing was stored; stop it, wait until the pressure is gone, and calibrate again.";

    public static string NeverStood(string channel, string pressure, LoopReading state, string reads, double seconds) => (state switch
    {
        LoopReading.Open => $"The loop of {channel} is open",
        LoopReading.Shorted => $"The loop of {channel} is shorted or beyond its range",
        LoopReading.Moving => $"{channel} never stood still at {pressure}",
        LoopReading.Waiting => $"Too few readings of {channel} came",
        _ => $"{channel} never came near {pressure}",
    })
    + $" within {seconds:0} s; it reads about {reads}. Nothing was stored; check wiring, hose and reference, and calibrate again.";

    public static string NoFit(string channel, string why) => $"{channel} cannot be calibrated ({why}). Nothing was stored.";

    public static string OutOfClass(string channel, string residual, string most) =>
        $"{channel} is off by {residual} at worst after the calibration, more than its class allows ({most}): transducer or reference is doubtful. Nothing was stored; look at both, or name another --class.";

    public static string Cut(string message) => $"{message} {Left}";

    public static string Stored(IEnumerable<string> channels, string due) =>
        $"Stored and read back: {string.Join(", ", channels)}. The logger works by it from its next session on; due again {due}.";

    public static string NotArchived(string reason) => $"The logger holds the new calibration, but the archive does not know it: {reason} Then calibrate again, so that reports can name the reference.";

    public static string Of(PressureUnit unit, double pascal) => unit.Format(pascal / unit.InPascal());
}
