using System;
using System.IO;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

/// <summary>A test that needs Poppler's pdftotext. Without it it is left out with the reason; with CI=true it is run all the same, and fails.</summary>
public sealed class PopplerFactAttribute : FactAttribute
{
    public const string Program = "/usr/bin/pdftotext";

    public PopplerFactAttribute() => Skip = !File.Exists(Program) && !string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase)
        ? $"There is no {Program}: install Debian's package poppler-utils."
        : null;
}
