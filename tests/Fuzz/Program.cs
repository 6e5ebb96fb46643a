using System;
using System.Globalization;
using LoggerBox.Fuzz;

string? Option(string name) => Array.IndexOf(args, name) is int at and >= 0 && at + 1 < args.Length ? args[at + 1] : null;
int Number(string name, int otherwise) => int.TryParse(Option(name), NumberStyles.Integer, CultureInfo.InvariantCulture, out int number) ? number : otherwise;

string? only = Option("--target");
if (only is not null && !FuzzTargets.ByName.ContainsKey(only))
{
    Console.Error.WriteLine($"There is no target {only}: name one of {string.Join(", ", FuzzTargets.ByName.Keys)}.");
    return 2;
}

TimeSpan time = TimeSpan.FromSeconds(Number("--seconds", 10));
int seed = Number("--seed", Environment.TickCount & 0xFFFFFF);
int found = 0;
foreach ((string name, Func<FuzzTarget> make) in FuzzTargets.ByName)
{
    if (only is not null && only != name)
    {
        continue;
    }

    using FuzzTarget target = make();
    CampaignResult result = Campaign.Run(target, time, seed);
    Console.WriteLine($"{name}: {result.Tried:N0} inputs from seed {seed}, {result.Refused:N0} refused, {(result.Wrong is null ? "nothing found" : result.Wrong)}");
    found += result.Wrong is null ? 0 : 1;
}

return found == 0 ? 0 : 1;
