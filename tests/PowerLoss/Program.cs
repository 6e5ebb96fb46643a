using System;
using System.Diagnostics;
using System.Linq;
using LoggerBox.PowerLoss;
using LoggerBox.PowerLoss.Faults;

int seed = args.Length > 0 ? int.Parse(args[0]) : 1;
Stopwatch clock = Stopwatch.StartNew();
Recording recording = Examples.EveryKindOfPage(seed);
Campaign campaign = new(recording, seed, Campaign.Faults(draws: 8, new RepeatedCuts(firstStride: 32, secondStride: 8, thirdStride: 64)));
campaign.Run(Environment.ProcessorCount);
foreach (var (name, states) in campaign.StatesByFault)
{
    Console.WriteLine($"{name,-28} {states,12:N0}");
}

long total = campaign.StatesByFault.Values.Sum();
Console.WriteLine($"{recording.Steps.Count} writes, {total:N0} states, {clock.Elapsed.TotalSeconds:F1} s, cpu {Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds:F1} s");
foreach (string violation in campaign.Violations)
{
    Console.WriteLine(violation);
}

return campaign.Violations.Count == 0 ? 0 : 1;
