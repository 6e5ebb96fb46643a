using System;
using System.CommandLine;
using LoggerBox.Host.Archive;

namespace LoggerBox.App.Console;

/// <summary>What a person looked at before and after the test: ticked, or taken back.</summary>
internal static class JobGateVerb
{
    public static Command Declare(Terminal terminal)
    {
        var job = JobVerb.JobArgument();
        var gates = new Argument<string[]>("GATE") { Description = JobMessages.GateArgument, Arity = ArgumentArity.OneOrMore };
        var by = SharedOptions.NotEmpty(new Option<string>("--by") { Description = JobMessages.ByOption, HelpName = "NAME", Required = true });
        var note = new Option<string?>("--note") { Description = JobMessages.NoteOption, HelpName = "TEXT" };
        var withdraw = new Option<bool>("--withdraw") { Description = JobMessages.WithdrawOption };
        var archive = SharedOptions.Archive();
        var verb = new Command("gate", JobMessages.GateVerb) { job, gates, by, note, withdraw, archive };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenExisting(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            string id = line.GetRequiredValue(job);
            string[] codes = line.GetRequiredValue(gates);
            bool withdrawn = line.GetValue(withdraw);
            if (withdrawn)
            {
                file.Gates.Withdraw(id, codes, line.GetRequiredValue(by), line.GetValue(note) ?? "", DateTimeOffset.Now);
            }
            else
            {
                file.Gates.Tick(id, codes, line.GetRequiredValue(by), line.GetValue(note) ?? "", DateTimeOffset.Now);
            }

            terminal.Out.WriteLine(JobMessages.Ticked(file.Jobs.Load(id), codes, withdrawn));
            return CommandLine.Done;
        });
        return verb;
    }
}
