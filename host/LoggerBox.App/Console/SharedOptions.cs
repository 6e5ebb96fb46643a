using System.CommandLine;
using System.CommandLine.Parsing;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Console;

/// <summary>Options that several verbs share; each call makes a new one, for a command owns its options.</summary>
internal static class SharedOptions
{
    public static Option<string?> Archive() => new("--archive") { Description = Messages.ArchiveOption, HelpName = "FILE" };

    public static Option<bool> Json() => new("--json") { Description = Messages.JsonOption };

    public static Option<string?> Sheet() => new("--sheet") { Description = Messages.SheetOption, HelpName = "FILE" };

    public static Option<string> Port() => new("--port") { Description = Messages.PortOption, HelpName = "P", Required = true };

    public static Option<PressureUnit?> Unit() => new("--unit")
    {
        Description = Messages.UnitOption,
        HelpName = "psi|kPa|bar|kgfcm2",
        CustomParser = ParseUnit,
    };

    public static Argument<string> What() => new("WHAT") { Description = Messages.WhatArgument };

    public static Option<string> OutFile(string description) => new("--out") { Description = description, HelpName = "FILE", Required = true };

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
