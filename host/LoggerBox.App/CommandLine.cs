using System;
using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using System.IO;
using LoggerBox.App.Console;
using LoggerBox.Host;
using LoggerBox.Host.Archive;

namespace LoggerBox.App;

/// <summary>
/// From words to a verb, and from whatever comes back to an exit status: 0 done, 1 it could not be done, 2 the command line is wrong.
/// </summary>
internal static class CommandLine
{
    public const int Done = 0;
    public const int Failed = 1;
    public const int Usage = 2;

    public static int Run(Command[] verbs, string[] words, Terminal terminal)
    {
        var root = new RootCommand(Messages.WhatItIs);
        root.Directives.Clear();
        foreach (Command verb in verbs)
        {
            root.Subcommands.Add(verb);
        }

        ParseResult parsed = root.Parse(words, new ParserConfiguration { ResponseFileTokenReplacer = null });
        bool asksForHelp = parsed.Action is HelpAction || parsed.CommandResult.Command is RootCommand && words.Length == 0;
        if (!asksForHelp && parsed.Errors.Count > 0)
        {
            string what = parsed.UnmatchedTokens.Count > 0 && parsed.CommandResult.Command.Subcommands.Count > 0
                ? Messages.NoVerb(parsed.UnmatchedTokens[0])
                : parsed.Errors[0].Message;
            terminal.Error.WriteLine(PlaceWords.WithoutPassword(Messages.WrongCommandLine(what, NameOf(parsed.CommandResult))));
            return Usage;
        }

        return Guard(terminal, () =>
        {
            ParseResult run = words.Length == 0 ? root.Parse(["--help"]) : parsed;
            return run.Invoke(new InvocationConfiguration
            {
                Output = terminal.Out,
                Error = terminal.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            });
        });
    }

    private static int Guard(Terminal terminal, Func<int> work)
    {
        try
        {
            int status = work();
            terminal.Progress.Wipe();
            terminal.Out.Flush();
            return status;
        }
        catch (UserErrorException error)
        {
            return Say(terminal, error.Message, error.Usage ? Usage : Failed);
        }
        catch (OperationCanceledException)
        {
            return Say(terminal, Messages.Stopped, Failed);
        }
        catch (IOException error) when (Terminal.IsClosedPipe(error))
        {
            return Failed;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Say(terminal, Messages.FileTrouble(error.Message), Failed);
        }
        catch (Exception error)
        {
            // The last line of defence: a person in a shop gets a sentence to pass on, never a stack trace.
            return Say(terminal, Messages.OwnFault(error), Failed);
        }
    }

    private static int Say(Terminal terminal, string sentence, int status)
    {
        terminal.Out.Flush();
        terminal.Progress.Wipe();

        // An address of an archive may have been typed where it does not belong, and its password must not stand on a screen.
        terminal.Error.WriteLine(PlaceWords.WithoutPassword(sentence));
        return status;
    }

    private static string NameOf(CommandResult command)
    {
        if (command.Command is RootCommand)
        {
            return "";
        }

        string parent = command.Parent is CommandResult above ? NameOf(above) : "";
        return parent.Length == 0 ? command.Command.Name : parent + " " + command.Command.Name;
    }
}
