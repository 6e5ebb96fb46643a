using System;
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.Campaign;
using TextReport = LoggerBox.Host.Report.TextReport;

int trucks = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2400;
int seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1;
string? only = args.Length > 2 ? args[2] : null;
if (int.TryParse(only, CultureInfo.InvariantCulture, out int number))
{
    TestedTruck one = Schedule.Of(trucks, seed).Single(truck => truck.Seed == number);
    var seen = new Bench().Test(one).Measured.Seen;
    new TextReport(Console.Out, colour: false).Write(one.ToString(), seen);
    foreach (var hold in seen.Holds)
    {
        Console.WriteLine(FormattableString.Invariant($"{hold.StartSeconds,7:0.0} {hold.DurationSeconds,5:0.0} {hold.Step,-14} {hold.Gear,-8} {(hold.Counts ? "*" : " ")} {hold.Rpm?.Settled,7:0.0} {hold.Main?.Settled,8:0.00} {hold.Clutch?.Settled,8:0.00} {hold.Converter?.Settled,8:0.00}"));
    }

    return;
}

var clock = Stopwatch.StartNew();
var bench = new Bench();
var outcomes = new ConcurrentBag<Outcome>();
Parallel.ForEach(Schedule.Of(trucks, seed).Where(truck => only is null || truck.Cause.Code == only), truck => outcomes.Add(bench.Test(truck)));
new Account(outcomes.OrderBy(outcome => outcome.Truck.Seed).ToList()).Write(Console.Out, verbose: only is not null);
Console.WriteLine($"{outcomes.Count} trucks, seed {seed}, {clock.Elapsed.TotalSeconds:0} s");
