using System;
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.Campaign;
using LoggerBox.Protocol.Rules;

// Arguments: how many trucks, seed, and either a cause's code or one truck's own seed as printed beside it.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
int trucks = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2400;
int seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1;
string? only = args.Length > 2 ? args[2] : null;
var bench = new Bench();
if (int.TryParse(only, CultureInfo.InvariantCulture, out int number))
{
    Closer.Look(bench.Test(Schedule.Of(trucks, seed).Single(truck => truck.Seed == number)), Console.Out);
    return 0;
}

if (only is not null && !CauseCodes.TryParse(only, out _))
{
    Console.Error.WriteLine($"'{only}' is neither a cause nor the seed of a truck.");
    return 2;
}

var clock = Stopwatch.StartNew();
var outcomes = new ConcurrentBag<Outcome>();
Parallel.ForEach(Schedule.Of(trucks, seed).Where(truck => only is null || truck.Cause.Code == only), truck => outcomes.Add(bench.Test(truck)));
Account.Write(new Tally([.. outcomes.OrderBy(outcome => outcome.Truck.Seed)]), Console.Out);
Console.WriteLine($"{outcomes.Count} trucks, seed {seed}, {clock.Elapsed.TotalSeconds:0} s");
return 0;
