using System;
using System.IO;
using System.Net.Sockets;
using System.Security.Authentication;
using Npgsql;

namespace LoggerBox.Host.Archive.Postgres;

/// <summary>What can be wrong with server, account or database, each as a sentence with host, port and database and the next thing to do.</summary>
internal static class PostgresErrors
{
    private const string HowItIsWritten = "postgresql://USER@HOST/DATABASE, or Host=HOST;Database=DATABASE;Username=USER";

    public static UserErrorException Wrong(string what) =>
        new($"The archive's address is not in order ({what}): write it as {HowItIsWritten}; what stands for a sign of its own in an address (@ : / ?) as %40 %3A %2F %3F.", usage: true);

    public static UserErrorException NoArchive(string name) =>
        new($"There is no archive in {name}: fetch or import a session first, or name another database with --archive.");

    public static UserErrorException NoSchema(string name) =>
        new($"{name} has no schema in which this account finds its tables: make the one that its search path names (CREATE SCHEMA), or name another database with --archive.");

    public static UserErrorException OfAnotherProgram(string name, string schema) =>
        new($"The schema {schema} of {name} holds tables of another program and no archive: nothing was changed; name a database of its own with --archive.");

    public static UserErrorException NotUnicode(string name, string encoding) =>
        new($"The database {name} keeps text as {encoding}, which cannot hold all that people write: make one with ENCODING 'UTF8' and name that with --archive.");

    public static UserErrorException Older(string name) =>
        new($"The archive {name} was written by an older program, and this account may not bring it up to date: run `loggerbox sessions` once with the account that owns its tables.");

    public static UserErrorException CannotCreate(string name, string? user) =>
        new($"The account {user} may not make an archive's tables in {name}: nothing was made; let the database's owner run `loggerbox sessions` first, or GRANT CREATE ON SCHEMA to this account.");

    public static UserErrorException NoAnswer(PostgresAddress at, string reason) =>
        new($"No PostgreSQL server answers on {at.Host}, port {at.Port} ({reason.TrimEnd('.')}), where the archive {at.Name} should be: check that it runs, host and port in --archive, and the network.");

    public static UserErrorException Lost(string name, string reason) =>
        new($"The connection to the archive {name} was lost ({reason.TrimEnd('.')}). What was being stored is there wholly or not at all: see with `loggerbox sessions` and `loggerbox job show` once the server answers, and repeat what is missing.");

    /// <summary>While the connection is being made.</summary>
    public static UserErrorException? WhileConnecting(PostgresAddress at, Exception error) => error switch
    {
        PostgresException refusal => OfServer(at, refusal),
        _ when Inner<AuthenticationException>(error) is { } line => NoSafeLine(at, line.Message),
        _ when Inner<SocketException>(error) is { } socket => NoAnswer(at, socket.Message),
        _ when Inner<TimeoutException>(error) is not null => NoAnswer(at, "no answer in time"),
        NpgsqlException { Message: var message } when message.Contains("password", StringComparison.OrdinalIgnoreCase) => NoPassword(at),
        NpgsqlException { Message: var message } when message.StartsWith("SSL", StringComparison.Ordinal) => NoSafeLine(at, message),
        NpgsqlException or IOException => NoAnswer(at, (error.InnerException ?? error).Message),
        ArgumentException or NotSupportedException or InvalidOperationException => Wrong("its settings do not go together"),
        _ => null,
    };

    /// <summary>On a connection that stood.</summary>
    public static UserErrorException? WhileWorking(PostgresAddress at, bool stands, Exception error) => error switch
    {
        PostgresException refusal => OfServer(at, refusal),
        NpgsqlException or IOException or SocketException => Lost(at.Name, (error.InnerException ?? error).Message),
        InvalidOperationException when !stands => Lost(at.Name, "it is closed"),
        System.Text.EncoderFallbackException => new UserErrorException($"The archive {at.Name} takes no text with half a letter in it: nothing was changed; write it again."),
        _ => null,
    };

    private static UserErrorException NoSafeLine(PostgresAddress at, string reason) =>
        new($"No encrypted connection to the server of {at.Name} comes about ({reason.TrimEnd('.')}): nothing was sent; check the server's certificate against sslrootcert, and that HOST is the name in it.");

    private static UserErrorException NoPassword(PostgresAddress at) =>
        new($"The server of {at.Name} wants a password for the account {at.User}, and none was given: write it into the file ~/.pgpass (or the one that PGPASSFILE names), which only you may read.");

    // The codes of PostgreSQL's manual, appendix "PostgreSQL Error Codes". Details are left out: they quote rows.
    private static UserErrorException OfServer(PostgresAddress at, PostgresException error) => new(error.SqlState switch
    {
        PostgresErrorCodes.InvalidPassword =>
            $"The server of {at.Name} does not take the password of the account {at.User}: check the account in --archive and the password in ~/.pgpass (or the file that PGPASSFILE names).",
        PostgresErrorCodes.InvalidAuthorizationSpecification =>
            $"The server of {at.Name} does not let the account {at.User} in ({error.MessageText}): check account and sslmode in --archive, and the server's pg_hba.conf.",
        PostgresErrorCodes.InvalidCatalogName =>
            $"The server on {at.Host}, port {at.Port}, has no database {at.Database}: make it there (createdb {at.Database}), or name another with --archive.",
        PostgresErrorCodes.TooManyConnections => $"The server of {at.Name} has no connection left ({error.MessageText}): close other programs that use it, or raise its max_connections.",
        PostgresErrorCodes.CannotConnectNow => $"The server of {at.Name} is starting or stopping ({error.MessageText}): try again in a moment.",
        PostgresErrorCodes.InsufficientPrivilege =>
            $"The account {at.User} may not do that in the archive {at.Name} ({error.MessageText}): nothing was changed; the README lists the rights that it needs. What it may read can still be looked at, judged and exported.",
        PostgresErrorCodes.ReadOnlySqlTransaction => $"The archive {at.Name} can only be read here ({error.MessageText}): nothing was changed; name the server that takes changes with --archive.",
        PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.DeadlockDetected => $"The archive {at.Name} is in use by another program: wait until that has done its work, and try again.",
        PostgresErrorCodes.DiskFull => $"There is no room left on the disk of the archive {at.Name}: free some on the server and try again; nothing was half written.",
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted or PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.UndefinedColumn =>
            $"The archive {at.Name} is damaged ({error.MessageText}): stop using it and restore it from a copy.",
        PostgresErrorCodes.CharacterNotInRepertoire or PostgresErrorCodes.UntranslatableCharacter => $"The archive {at.Name} cannot keep that text ({error.MessageText}): nothing was changed; take the sign out.",
        _ when error.SqlState.StartsWith("57P", StringComparison.Ordinal) || error.SqlState.StartsWith("08", StringComparison.Ordinal) || error.SqlState.StartsWith("25P", StringComparison.Ordinal) =>
            Lost(at.Name, error.MessageText).Message,
        _ when error.SqlState.StartsWith("58", StringComparison.Ordinal) => $"The disk of the archive {at.Name} failed ({error.MessageText}): check the server's disk and try again.",
        _ => $"The archive {at.Name} refused the operation ({error.MessageText}, code {error.SqlState}): keep a copy of it and try again.",
    });

    private static T? Inner<T>(Exception error)
        where T : Exception
    {
        for (Exception? one = error; one is not null; one = one.InnerException)
        {
            if (one is T found)
            {
                return found;
            }
        }

        return null;
    }
}
