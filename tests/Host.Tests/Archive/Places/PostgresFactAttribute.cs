using System;
using Xunit;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>A test that needs a PostgreSQL server. Without one it is left out with the reason; with CI=true it is run all the same, and fails.</summary>
public sealed class PostgresFactAttribute : FactAttribute
{
    public PostgresFactAttribute() => Skip = Reason;

    /// <summary>Null: not to be left out.</summary>
    internal static string? Reason => string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase) ? null : PostgresServer.Missing;
}
