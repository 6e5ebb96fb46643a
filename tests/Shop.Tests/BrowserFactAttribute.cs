using System;
using System.IO;
using Xunit;

namespace LoggerBox.Shop.Tests;

/// <summary>
/// A test that needs a browser: Debian's Chromium, or the program that LOGGERBOX_CHROMIUM names. Without one it is left out with the reason; with
/// CI=true it is run all the same, and fails.
/// </summary>
public sealed class BrowserFactAttribute : FactAttribute
{
    public const string Variable = "LOGGERBOX_CHROMIUM";

    public BrowserFactAttribute() => Skip = MayBeLeftOut && !File.Exists(Program)
        ? $"There is no {Program}: install Debian's package chromium, or name a Chromium with {Variable}."
        : null;

    public static string Program => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named ? named : "/usr/bin/chromium";

    private static bool MayBeLeftOut => !string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase);
}
