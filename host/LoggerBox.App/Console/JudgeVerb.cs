using System.CommandLine;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;

namespace LoggerBox.App.Console;

/// <summary>Judges a job, a session or a trace file.</summary>
internal static class JudgeVerb
{
    public static Command Declare(Terminal terminal)
    {
        var reading = new SubjectReading(terminal);
        var json = SharedOptions.Json();
        var verb = new Command("judge", Messages.JudgeVerb) { json };
        reading.AddTo(verb);
        verb.SetAction(line =>
        {
            if (line.GetValue(json))
            {
                JudgementJson.Write(reading.Judged(line).Judgement, terminal.Out);
            }
            else
            {
                new TextReport(terminal.Out, terminal.Colour).Write(reading.Reported(line));
            }

            return CommandLine.Done;
        });
        return verb;
    }
}
