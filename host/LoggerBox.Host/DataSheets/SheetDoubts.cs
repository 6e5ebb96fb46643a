namespace LoggerBox.Host.DataSheets;

/// <summary>What a sheet may well say and hardly means: slips of the keyboard, another unit, a digit that the scan lost.</summary>
internal static class SheetDoubts
{
    // Common practice, no source: no lift truck's engine idles outside this, no transmission is tested with oil hotter than this.
    private const double SlowestIdle = 350;
    private const double FastestIdle = 1500;
    private const double HottestOil = 130;

    public static void Find(DataSheet sheet, FindingList findings)
    {
        if (sheet.Truck.Length == 0)
        {
            findings.Warning(1, "[truck] has no name: the report will not say which truck it is for.");
        }

        if (sheet.Source.Length == 0)
        {
            findings.Warning(1, "[truck] has no source: write the manual, section and page, who typed it and who checked it.");
        }

        if (sheet.EngineByFuel.Count > 0 && sheet.Engine.Fuel is null)
        {
            findings.Warning(1, "[engine] has tables by fuel but no fuel: without the fuel on the job, only what all of them agree on is judged.");
        }

        Oil(sheet.OilCelsius, findings);
        Engine(sheet.Engine, findings);
        foreach (EngineLimits engine in sheet.EngineByFuel.Values)
        {
            if (engine != sheet.Engine)
            {
                Engine(engine, findings);
            }
        }
    }

    private static void Oil(Limit? oil, FindingList findings)
    {
        if (oil is { IsJudged: true } && (oil.Max ?? oil.Min) > HottestOil)
        {
            findings.Warning(oil.Line, $"oil.temperature_c is {oil.Printed} °C: that reads like °F, which would be {Celsius(oil)} °C. Write it in °C.");
        }
    }

    private static string Celsius(Limit fahrenheit) => (fahrenheit.Min, fahrenheit.Max) switch
    {
        ({ } low, { } high) => $"{FromFahrenheit(low)} to {FromFahrenheit(high)}",
        ({ } low, _) => $"at least {FromFahrenheit(low)}",
        (_, { } high) => $"at most {FromFahrenheit(high)}",
        _ => "",
    };

    private static string FromFahrenheit(double value) => TableReader.Show(System.Math.Round((value - 32) / 1.8));

    private static void Engine(EngineLimits engine, FindingList findings)
    {
        if (engine.IdleRpm is { IsJudged: true } idle)
        {
            double rpm = idle.Max ?? idle.Min!.Value;
            if (rpm is < SlowestIdle or > FastestIdle)
            {
                findings.Warning(idle.Line, $"idle_rpm is {idle.Printed} rpm: no engine idles there. Look whether a digit is missing or too many.");
            }
            else if ((engine.GovernedRpm?.Max ?? engine.GovernedRpm?.Min ?? engine.GovernedRpm?.Nominal) is double governed && rpm >= governed)
            {
                findings.Warning(idle.Line, $"idle_rpm is {idle.Printed} rpm and governed_rpm {engine.GovernedRpm!.Printed} rpm: idle is above governed speed. Look whether they are exchanged.");
            }
        }
    }
}
