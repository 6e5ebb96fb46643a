using System;
using System.Collections.Generic;
using System.Globalization;
using Npgsql;

namespace LoggerBox.Host.Archive.Postgres;

/// <summary>Which database of which server, as somebody typed it. A password in it goes to the server and nowhere else.</summary>
internal sealed class PostgresAddress
{
    private const int DefaultPort = 5432;

    // What an address may say behind its question mark (PostgreSQL's manual, section "Parameter Key Words" of libpq), in the words of the driver.
    private static readonly Dictionary<string, string> Parameters = new(StringComparer.Ordinal)
    {
        ["host"] = "Host",
        ["port"] = "Port",
        ["dbname"] = "Database",
        ["user"] = "Username",
        ["password"] = "Password",
        ["passfile"] = "Passfile",
        ["sslmode"] = "SSL Mode",
        ["sslrootcert"] = "Root Certificate",
        ["sslcert"] = "SSL Certificate",
        ["sslkey"] = "SSL Key",
        ["connect_timeout"] = "Timeout",
        ["application_name"] = "Application Name",
        ["options"] = "Options",
    };

    private readonly NpgsqlConnectionStringBuilder settings;

    private PostgresAddress(NpgsqlConnectionStringBuilder settings) => this.settings = settings;

    /// <summary>For messages: as an address is written, without user and password.</summary>
    public string Name => settings.Host!.StartsWith('/')
        ? string.Create(CultureInfo.InvariantCulture, $"postgresql:///{settings.Database}?host={settings.Host}&port={settings.Port}")
        : string.Create(CultureInfo.InvariantCulture, $"postgresql://{(settings.Host.Contains(':', StringComparison.Ordinal) ? $"[{settings.Host}]" : settings.Host)}:{settings.Port}/{settings.Database}");

    public string Host => settings.Host!;

    public int Port => settings.Port;

    public string Database => settings.Database!;

    public string? User => settings.Username;

    /// <exception cref="UserErrorException">It is no such address, or names no host or database.</exception>
    public static PostgresAddress Read(string place)
    {
        NpgsqlConnectionStringBuilder settings = place.Contains("://", StringComparison.Ordinal) ? OfUri(place) : OfPairs(place);
        if (string.IsNullOrEmpty(settings.Host))
        {
            throw PostgresErrors.Wrong("it names no host");
        }

        if (string.IsNullOrEmpty(settings.Database))
        {
            throw PostgresErrors.Wrong("it names no database");
        }

        // One verb opens one connection and ends: none is kept for later.
        settings.Pooling = false;
        settings.TcpKeepAlive = true;
        settings.ApplicationName ??= "loggerbox";
        return new PostgresAddress(settings);
    }

    public NpgsqlDataSource Source()
    {
        NpgsqlSlimDataSourceBuilder builder = new(settings.ConnectionString);
        builder.EnableTransportSecurity();

        // The server's own types need not be asked for: an archive has whole numbers, real numbers, text and bytes.
        builder.ConfigureTypeLoading(loading => loading.EnableTypeLoading(false));
        return builder.Build();
    }

    private static NpgsqlConnectionStringBuilder OfPairs(string place)
    {
        NpgsqlConnectionStringBuilder settings = [];
        try
        {
            settings.ConnectionString = place;
        }
        catch (Exception error) when (error is ArgumentException or FormatException or InvalidCastException or KeyNotFoundException or OverflowException)
        {
            // The reason may quote what was typed, and that may be the password.
            throw PostgresErrors.Wrong("a key or value in it is none of a connection string");
        }

        return settings;
    }

    private static NpgsqlConnectionStringBuilder OfUri(string place)
    {
        string rest = place[(place.IndexOf("://", StringComparison.Ordinal) + 3)..];
        int query = rest.IndexOf('?', StringComparison.Ordinal);
        string body = query < 0 ? rest : rest[..query];
        NpgsqlConnectionStringBuilder settings = new() { Port = DefaultPort };
        int at = body.LastIndexOf('@');
        if (at >= 0)
        {
            string[] who = body[..at].Split(':', 2);
            Set(settings, "user", who[0]);
            Set(settings, "password", who.Length > 1 ? who[1] : "");
        }

        string[] where = body[(at + 1)..].Split('/', 2);
        int colon = where[0].LastIndexOf(':');
        bool hasPort = colon > where[0].LastIndexOf(']');
        Set(settings, "host", (hasPort ? where[0][..colon] : where[0]).Trim('[', ']'));
        Set(settings, "port", hasPort ? where[0][(colon + 1)..] : "");
        Set(settings, "dbname", where.Length > 1 ? where[1] : "");
        foreach (string pair in query < 0 ? [] : rest[(query + 1)..].Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] both = pair.Split('=', 2);
            Set(settings, both[0], both.Length > 1 ? both[1] : "");
        }

        return settings;
    }

    private static void Set(NpgsqlConnectionStringBuilder settings, string name, string value)
    {
        if (!Parameters.TryGetValue(name, out string? key))
        {
            // Not by its name: behind a ? that belongs to a password may stand the rest of it.
            throw PostgresErrors.Wrong($"what stands behind its ? is none of {string.Join(", ", Parameters.Keys)}");
        }

        if (value.Length == 0)
        {
            return;
        }

        try
        {
            string plain = Uri.UnescapeDataString(value);
            settings[key] = name == "sslmode" ? plain.Replace("-", "", StringComparison.Ordinal) : plain;
        }
        catch (Exception error) when (error is ArgumentException or FormatException or InvalidCastException or OverflowException)
        {
            throw PostgresErrors.Wrong($"its {name} cannot be what is written there");
        }
    }
}
