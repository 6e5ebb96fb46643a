using System.CommandLine;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Subjects;

namespace LoggerBox.App.Console;

/// <summary>Before and after a repair: two jobs, sessions or trace files of one truck.</summary>
internal static class CompareVerb
{
    public static Command Declare(Terminal terminal)
    {
        var reading = new SubjectReading(terminal);
        var before = SharedOptions.NotEmpty(new Argument<string>("BEFORE") { Description = Messages.BeforeArgument });
        var after = SharedOptions.NotEmpty(new Argument<string>("AFTER") { Description = Messages.AfterArgument });
        var json = SharedOptions.Json();
        var verb = new Command("compare", Messages.CompareVerb) { before, after, json };
        reading.AddOptionsTo(verb);
        verb.SetAction(line =>
        {
            (Subject Subject, Judgement Judgement) first = reading.Judged(line, line.GetRequiredValue(before));
            (Subject Subject, Judgement Judgement) second = reading.Judged(line, line.GetRequiredValue(after), first.Judgement.Unit);
            SameTruck.Demand(first.Subject, second.Subject);
            Comparison comparison = Comparison.Of(first.Judgement, second.Judgement);
            if (line.GetValue(json))
            {
                ComparisonJson.Write(comparison, terminal.Out);
            }
            else
            {
                ComparisonText.Write(comparison, first.Subject.Title, second.Subject.Title, terminal.Out);
            }

            return CommandLine.Done;
        });
        return verb;
    }
}
