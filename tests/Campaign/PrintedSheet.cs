using System;
using System.Globalization;
using System.Linq;
using System.Text;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Operator;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.Campaign;

/// <summary>
/// What a manual of each design would print: the design's own readings with tolerances of the size that manuals give (common practice,
/// no source), rounded as printers do, each design in another unit and with other gaps.
/// </summary>
internal static class PrintedSheet
{
    private static readonly PressureUnit[] Units = [PressureUnit.Psi, PressureUnit.Bar, PressureUnit.Kilopascal, PressureUnit.KilogramForcePerSquareCentimetre];

    public static DataSheet Of(int design)
    {
        var nominal = new FittedTruck(TruckDesigns.All[design].Truck, new InstrumentParameters { Noise = 0 });
        DataSheet blank = Parse(design, $"[truck]\nname = \"draft\"\n[engine]\ngoverned_rpm = {{ reference = {TruckDesigns.All[design].Truck.Engine.GovernedCutoff - 60:0} }}\nstall_rpm = {{ reference = 1900 }}\n[pressure]\nunit = \"psi\"\n");
        Judgement readings = Measurement.Take(nominal, new JobHabits { RestlessShare = 0, GivenUpShare = 0 }, 1, blank).True;
        return Parse(design, Text(design, readings));
    }

    private static DataSheet Parse(int design, string text) => DataSheetReader.Parse(text, $"design-{design}.toml");

    private static string Text(int design, Judgement readings)
    {
        PressureUnit unit = Units[design];
        double perPsi = PressureUnit.Psi.InPascal() / unit.InPascal();
        double Rpm(Step step) => Hold(readings, step).Rpm!.Settled;
        double Psi(Step step, Func<JudgedHold, Reading?> channel) => channel(Hold(readings, step))!.Settled;
        double drop = Rpm(Step.Governed) - Rpm(Step.Relief);
        double stall = (Rpm(Step.StallForward) + Rpm(Step.StallReverse)) / 2;
        double engage = readings.Engagements.Where(e => e.TotalSeconds is > 0.1).Select(e => e.TotalSeconds!.Value).DefaultIfEmpty(1).Average();
        string Range(double psi, double low, double high)
        {
            string format = unit is PressureUnit.Bar or PressureUnit.KilogramForcePerSquareCentimetre ? "0.0" : "0";
            return string.Create(CultureInfo.InvariantCulture, $"{{ min = {(psi * low * perPsi).ToString(format, CultureInfo.InvariantCulture)}, max = {(psi * high * perPsi).ToString(format, CultureInfo.InvariantCulture)} }}");
        }

        var text = new StringBuilder();
        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
        Line($"[truck]\nname = \"{TruckDesigns.All[design].Name}\"\nsource = \"invented\"\n[engine]");
        Line($"idle_rpm = {{ nominal = {Tens(Rpm(Step.IdleNeutral))}, tolerance = 60 }}");
        Line($"governed_rpm = {{ nominal = {Tens(Rpm(Step.Governed))}, tolerance = 60 }}");
        Line($"relief_drop_rpm = {{ min = {Tens(0.55 * drop)}, max = {Tens(1.3 * drop)} }}");
        Line($"stall_rpm = {{ nominal = {Tens(stall)}, tolerance = {(design == 2 ? 150 : 110)} }}");
        Line($"[pressure]\nunit = \"{unit.Code()}\"\n[pressure.idle]");
        Line($"main = {Range(Psi(Step.IdleNeutral, h => h.Main), 0.72, 1.3)}");
        Line($"clutch = {Range(Psi(Step.IdleForward, h => h.Clutch), 0.72, 1.3)}");
        Line($"converter = {Range(Psi(Step.IdleNeutral, h => h.Converter), 0.55, 1.5)}");
        Line($"[pressure.hold]\nrpm = 2000\nwindow_rpm = 75\nmain = {Range(Psi(Step.HoldNeutral, h => h.Main), 0.92, 1.1)}");
        Line($"clutch = {Range(Psi(Step.HoldForward, h => h.Clutch), 0.92, 1.1)}");
        Line($"converter = {Range(Psi(Step.HoldNeutral, h => h.Converter), 0.72, 1.35)}");
        Line($"[engagement]\ntime_s = {{ min = {0.6 * engage:0.00}, max = {1.7 * engage:0.0} }}");
        Line($"[pickup]\npulses_per_rev = 0.5");
        return text.ToString();
    }

    private static double Tens(double value) => Math.Round(value / 10) * 10;

    private static JudgedHold Hold(Judgement readings, Step step) => readings.Holds.Last(hold => hold.Counts && hold.Step == step);
}
