using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Judging.Looking;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Console;

/// <summary>Looks through a recording of normal work for the engagement or stall that is unlike the others.</summary>
internal static class LookVerb
{
    private const int MostUsualShown = 20;

    public static Command Declare(Terminal terminal)
    {
        var reading = new SubjectReading(terminal);
        var json = SharedOptions.Json();
        var verb = new Command("look", Messages.LookVerb) { json };
        reading.AddTo(verb);
        verb.SetAction(line =>
        {
            (Subject subject, PlanRecord plan) = reading.Recorded(line);
            IReadOnlyList<Seen> seen = LookList.Of(subject.Sessions, plan);
            if (line.GetValue(json))
            {
                ListingJson.WriteArray(terminal.Out, seen, ListingJson.Seen);
            }
            else
            {
                Print(terminal, subject.Title, seen);
            }

            return CommandLine.Done;
        });
        return verb;
    }

    private static void Print(Terminal terminal, string title, IReadOnlyList<Seen> seen)
    {
        int odd = seen.Count(one => one.IsOdd);
        int alone = seen.Count(one => one.Oddness is null);
        terminal.Out.WriteLine(PlainText.Of(Messages.LookFound(title, seen.Count(one => one.Kind == "engagement"), seen.Count(one => one.Kind == "stall"), odd, alone)));
        if (alone > 0)
        {
            terminal.Out.WriteLine(PlainText.Of(Messages.LookTooFew(alone, LookList.FewestAlike)));
        }

        var table = new TextTable("lllrrl");
        table.Add("at", "", "gear", "measured", "usual", "");
        foreach (Seen one in seen.Take(odd + MostUsualShown))
        {
            string unit = one.Kind == "stall" ? "rpm" : "s";
            table.Add(
                TimeSpan.FromSeconds(one.StartSeconds).ToString(@"h\:mm\:ss", CultureInfo.InvariantCulture),
                one.AboveIdle ? Messages.AboveIdle(one.Kind) : one.Kind,
                StepWords.Of(one.Gear),
                one.Value is double value ? Figure.Of(value, unit) + " " + unit : Messages.NeverFilled,
                one.Usual is double usual ? Figure.Of(usual, unit) : "-",
                one.IsOdd ? Messages.Odd : "");
        }

        table.WriteTo(terminal.Out);
        if (seen.Count > odd + MostUsualShown)
        {
            terminal.Out.WriteLine(Messages.LookMore(seen.Count - odd - MostUsualShown));
        }
    }
}
