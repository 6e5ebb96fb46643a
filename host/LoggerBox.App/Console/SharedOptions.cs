using System.Collections.Generic;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Linq;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Console;

/// <summary>Options that several verbs share; each call makes a new one, for a command owns its options.</summary>
internal static class SharedOptions
{
    public static Option<string?> Archive() => NotEmpty(new Option<string?>("--archive") { Description = Messages.ArchiveOption, HelpName = "FILE" });

    public static Option<bool> Json() => new("--json") { Description = Messages.JsonOption };

    public static Option<string?> Sheet() => NotEmpty(new Option<string?>("--sheet") { Description = Messages.SheetOption, HelpName = "FILE" });

    public static Option<string> Port() => NotEmpty(new Option<string>("--port") { Description = Messages.PortOption, HelpName = "P", Required = true });

    public static Option<PressureUnit?> Unit() => new("--unit")
    {
        Description = Messages.UnitOption,
        HelpName = "psi|kPa|bar|kgfcm2",
        CustomParser = ParseUnit,
    };

    public static Argument<string> What() => NotEmpty(new Argument<string>("WHAT") { Description = Messages.WhatArgument });

    public static Option<string> OutFile(string description) => NotEmpty(new Option<string>("--out") { Description = description, HelpName = "FILE", Required = true });

    /// <summary>A name that a script left empty is refused here, by what it was for; the file system would only call it invalid.</summary>
    public static Option<T> NotEmpty<T>(Option<T> option)
    {
        option.Validators.Add(result => RefuseEmpty(result, result.Tokens, option.Name));
        return option;
    }

    public static Argument<T> NotEmpty<T>(Argument<T> argument)
    {
        argument.Validators.Add(result => RefuseEmpty(result, result.Tokens, argument.Name));
        return argument;
    }

    /// <summary>A word that is no number at all is refused where it is read.</summary>
    public static Option<int?> Between(Option<int?> option, int lowest, int highest)
    {
        option.Validators.Add(result =>
        {
            if (result.Tokens.Any(token => int.TryParse(token.Value, out int number) && (number < lowest || number > highest)))
            {
                result.AddError(Messages.OutOfRange(option.Name, lowest, highest));
            }
        });
        return option;
    }

    private static void RefuseEmpty(SymbolResult result, IReadOnlyList<Token> tokens, string name)
    {
        if (tokens.Any(token => token.Value.Length == 0))
        {
            result.AddError(Messages.EmptyName(name));
        }
    }

    private static PressureUnit? ParseUnit(ArgumentResult result)
    {
        if (PressureUnits.TryParse(result.Tokens[0].Value, out PressureUnit unit))
        {
            return unit;
        }

        result.AddError(Messages.UnknownUnit(result.Tokens[0].Value));
        return null;
    }
}
