using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using LoggerBox.PowerLoss;
using LoggerBox.PowerLoss.Faults;

if (args.Length == 2 && args[0] == KilledChild.Verb)
{
    return KilledChild.Record(args[1]);
}

int seed = args.Length > 0 && int.TryParse(args[0], CultureInfo.InvariantCulture, out int given) ? given : 1;
int threads = Environment.ProcessorCount;
Stopwatch clock = Stopwatch.StartNew();
Recording example = Examples.EveryKindOfPage(seed);
Campaign campaign = new(example, seed, Campaign.Faults(draws: 16, placeStride: 1, new RepeatedCuts(firstStride: 5, secondStride: 4, thirdStride: 32)));
campaign.Run(threads);
Recording hour = Examples.OneHour(seed);
OneHour random = new(hour, seed, states: 100_000);
TimeSpan beforeHour = clock.Elapsed;
random.Run(threads);
TimeSpan afterHour = clock.Elapsed;
LossAfterCuts loss = LossAfterCuts.Measure(seed);

Console.WriteLine($"seed {seed}, {threads} threads; log of every kind of page: {example.Steps.Count} writes, {example.Steps.Sum(step => step.Write.New.Length):N0} bytes; three cuts deep");
foreach (KeyValuePair<string, long> fault in campaign.StatesByFault)
{
    Console.WriteLine($"  {fault.Key,-28} {fault.Value,12:N0} states");
}

Console.WriteLine($"  {"one hour, random",-28} {random.States,12:N0} states; log of {hour.Steps.Count} writes, {hour.Steps.Sum(step => step.Write.New.Length):N0} bytes, {(afterHour - beforeHour).TotalSeconds:F1} s");
Console.WriteLine($"  {"sets lost by a cut",-28} {loss.States,12:N0} states; {loss.Most} at most, {loss.Mean:F1} on average");
long states = campaign.StatesByFault.Values.Sum() + random.States + loss.States;
double seconds = clock.Elapsed.TotalSeconds;
double processor = Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;
List<string> violations = [.. campaign.Violations, .. random.Violations];
Console.WriteLine($"{states:N0} states in {seconds:F1} s ({states / seconds:N0} a second; {processor:F1} s of processor time), {violations.Count} violations");
violations.ForEach(Console.WriteLine);
return violations.Count == 0 ? 0 : 1;
