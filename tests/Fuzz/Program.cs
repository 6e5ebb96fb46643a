using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using LoggerBox.Fuzz.Targets;

Dictionary<string, Func<Random, string?>> targets = new() { ["frame"] = FrameTarget.Try, ["record"] = RecordTarget.Try };
int Option(string name, int otherwise) =>
    Array.IndexOf(args, name) is int at and >= 0 && at + 1 < args.Length ? int.Parse(args[at + 1], CultureInfo.InvariantCulture) : otherwise;
string? only = Array.IndexOf(args, "--target") is int place and >= 0 && place + 1 < args.Length ? args[place + 1] : null;
int seconds = Option("--seconds", 10);
int first = Option("--seed", Environment.TickCount & 0xFFFFFF);
int failures = 0;
foreach ((string name, Func<Random, string?> target) in targets)
{
    Stopwatch clock = Stopwatch.StartNew();
    int tried = 0;
    while ((only is null || only == name) && clock.Elapsed.TotalSeconds < seconds)
    {
        string? wrong;
        int seed = unchecked(first + tried++);
        try
        {
            wrong = target(new Random(seed));
        }
        catch (Exception error)
        {
            wrong = error.ToString();
        }

        if (wrong is not null)
        {
            Console.WriteLine($"{name}, --seed {seed}: {wrong}");
            failures++;
            break;
        }
    }

    Console.WriteLine($"{name}: {tried:N0} inputs from seed {first}");
}

return failures == 0 ? 0 : 1;
