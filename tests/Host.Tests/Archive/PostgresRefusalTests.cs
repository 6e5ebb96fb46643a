using System;
using System.IO;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>What a server refuses, and what becomes of a server: each a sentence with where it was and what to do, and never a password.</summary>
public class PostgresRefusalTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private static PostgresServer Server => PostgresServer.Shared;

    [PostgresFact]
    public void No_server_no_database_no_account_and_the_wrong_password_are_told_apart()
    {
        string database = Server.NewDatabase();
        Refused(Server.Address(database).Replace(":" + Server.Port, ":9", StringComparison.Ordinal), "No PostgreSQL server answers on 127.0.0.1, port 9", "check that it runs");
        Refused(Server.Address(database).Replace("127.0.0.1", "nowhere.invalid", StringComparison.Ordinal), "No PostgreSQL server answers on nowhere.invalid");
        Refused(Server.Address("nothing"), $"The server on 127.0.0.1, port {Server.Port}, has no database nothing", "createdb nothing");
        Refused(Server.Address(database, password: "other secret"), "does not take the password of the account owner", "~/.pgpass");
        Refused(Server.Address(database, user: "stranger"), "does not take the password of the account stranger");
        Refused($"postgresql://owner@127.0.0.1:{Server.Port}/{database}", "wants a password for the account owner");
        Refused(Server.Address(database) + "?options=-csearch_path%3Dnowhere", "has no schema");
    }

    [PostgresFact]
    public void An_encrypted_connection_comes_about_with_a_certificate_that_is_known_and_of_that_name_only()
    {
        string database = Server.NewDatabase();
        string numbers = Server.Address(database);
        string named = numbers.Replace("127.0.0.1", "localhost", StringComparison.Ordinal);
        string known = $"&sslrootcert={Uri.EscapeDataString(Server.Certificate)}";
        using (ArchiveFile archive = ArchiveFile.Open(named + "?sslmode=verify-full" + known))
        {
            Assert.True(archive.Read(open => open.Rows("SELECT ssl FROM pg_stat_ssl WHERE pid = pg_backend_pid()", row => row.GetBoolean(0))[0]));
        }

        Refused(named + "?sslmode=verify-full", $"No encrypted connection to the server of postgresql://localhost:{Server.Port}/{database}", "sslrootcert");
        Refused(numbers + "?sslmode=verify-full" + known, "No encrypted connection", "HOST is the name in it");
        using ArchiveFile open = ArchiveFile.Open(numbers + "?sslmode=disable");
        Assert.Empty(open.Sessions.All());
    }

    [PostgresFact]
    public void A_password_file_gives_the_password()
    {
        using TemporaryFolder folder = new();
        string file = folder.File("pgpass");
        File.WriteAllText(file, $"127.0.0.1:{Server.Port}:*:owner:{PostgresServer.Password.Replace(":", "\\:", StringComparison.Ordinal)}\n");
        using ArchiveFile archive = ArchiveFile.Open($"postgresql://owner@127.0.0.1:{Server.Port}/{Server.NewDatabase()}?passfile={Uri.EscapeDataString(file)}");
        Assert.Empty(archive.Sessions.All());
    }

    [PostgresFact]
    public void A_database_that_cannot_hold_every_letter_is_refused()
    {
        string database = Server.NewDatabase("ENCODING 'LATIN1' TEMPLATE template0");
        Refused(Server.Address(database), "keeps text as LATIN1", "ENCODING 'UTF8'");
    }

    /// <summary>The rights that the README lists are enough, and fewer are told.</summary>
    [PostgresFact]
    public void An_account_needs_no_more_rights_than_are_written_and_is_told_which_it_lacks()
    {
        string database = Server.NewDatabase();
        string clerk = database + "_clerk";
        string reader = database + "_reader";
        Server.Execute(database, $"CREATE ROLE {clerk} LOGIN PASSWORD 'clerk'; CREATE ROLE {reader} LOGIN PASSWORD 'reader'");
        Refused(Server.Address(database, clerk, "clerk"), $"The account {clerk} may not make an archive's tables", "GRANT CREATE");
        ArchiveFile.Open(Server.Address(database)).Dispose();
        Server.Execute(database, $"GRANT SELECT, INSERT, UPDATE ON ALL TABLES IN SCHEMA public TO {clerk}; GRANT SELECT ON ALL TABLES IN SCHEMA public TO {reader}");

        using (ArchiveFile archive = ArchiveFile.Open(Server.Address(database, clerk, "clerk")))
        {
            archive.Sessions.Add(RecordedBytes.Session(1, seed: 1).ToArray(), SessionOrigin.Fetched, "COM3", Now);
            archive.Jobs.AddSessions(archive.Jobs.Create(new JobDetails(), Now), ["S1"], Now);
            archive.Gates.Tick("J1", ["chocks"], "A. Fitter", "", Now);
            archive.Jobs.Close("J1", Now);
        }

        using ArchiveFile looked = ArchiveFile.OpenForReading(Server.Address(database, reader, "reader"));
        Assert.Single(looked.Sessions.All());
        Assert.Empty(ArchiveCheck.Of(looked));
        string refusal = Assert.Throws<UserErrorException>(() => looked.Jobs.Create(new JobDetails(), Now)).Message;
        Assert.Contains($"The account {reader} may not do that", refusal, StringComparison.Ordinal);
        Assert.Contains("nothing was changed", refusal, StringComparison.Ordinal);
    }

    [PostgresFact]
    public void An_archive_of_an_older_schema_that_may_not_be_changed_says_whose_turn_it_is()
    {
        string database = Server.NewDatabase();
        Server.Execute(database, ArchiveSchema.Script("Postgres", 1) + "UPDATE loggerbox_archive SET version = 1;");
        string reader = database + "_reader";
        Server.Execute(database, $"CREATE ROLE {reader} LOGIN PASSWORD 'reader'; GRANT SELECT ON ALL TABLES IN SCHEMA public TO {reader}");
        Assert.Contains(
            "the account that owns its tables",
            Assert.Throws<UserErrorException>(() => ArchiveFile.OpenForReading(Server.Address(database, reader, "reader"))).Message,
            StringComparison.Ordinal);
    }

    [PostgresFact]
    public void An_archive_that_a_later_program_brought_forward_meanwhile_takes_nothing_from_this_one()
    {
        string database = Server.NewDatabase();
        using ArchiveFile archive = ArchiveFile.Open(Server.Address(database));
        Server.Execute(database, "UPDATE loggerbox_archive SET version = 5");
        Assert.Contains("newer program (schema 5", Assert.Throws<UserErrorException>(() => archive.Jobs.Create(new JobDetails(), Now)).Message, StringComparison.Ordinal);
        Server.Execute(database, "UPDATE loggerbox_archive SET version = 4");
        Assert.Empty(archive.Jobs.All());
    }

    [PostgresFact]
    public void A_connection_that_is_cut_in_the_middle_of_a_change_leaves_nothing_of_it()
    {
        string database = Server.NewDatabase();
        using (ArchiveFile archive = ArchiveFile.Open(Server.Address(database)))
        {
            string refusal = Assert.Throws<UserErrorException>(() => archive.Change(open =>
            {
                open.Scalar(JobColumns.Insert, JobColumns.OfNew(null, null, new JobDetails(), Now));
                Server.Execute("postgres", $"SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '{database}'");
                return open.Scalar("SELECT count(*) FROM jobs");
            })).Message;
            Assert.Contains($"The connection to the archive postgresql://127.0.0.1:{Server.Port}/{database} was lost", refusal, StringComparison.Ordinal);
            Assert.Contains("repeat what is missing", refusal, StringComparison.Ordinal);
            Assert.Contains("was lost", Assert.Throws<UserErrorException>(() => archive.Jobs.Create(new JobDetails(), Now)).Message, StringComparison.Ordinal);
        }

        using ArchiveFile again = ArchiveFile.Open(Server.Address(database));
        Assert.Equal("J1", again.Jobs.Create(new JobDetails(), Now));
    }

    /// <summary>A server may be set up to answer before a change is on its disk: here it does not.</summary>
    [PostgresFact]
    public void A_change_is_on_the_disk_when_it_is_said_to_be_whatever_the_server_is_set_to()
    {
        string database = Server.NewDatabase();
        Server.Execute("postgres", $"ALTER DATABASE {database} SET synchronous_commit = off");
        using ArchiveFile archive = ArchiveFile.Open(Server.Address(database));
        Assert.Equal("on", archive.Change(open => open.Rows("SHOW synchronous_commit", row => row.GetString(0))[0]));
        Assert.Equal("off", archive.Read(open => open.Rows("SHOW synchronous_commit", row => row.GetString(0))[0]));
    }

    private static void Refused(string place, params string[] words)
    {
        string refusal = Assert.Throws<UserErrorException>(() => ArchiveFile.Open(place)).Message;
        Assert.All(words, word => Assert.Contains(word, refusal, StringComparison.Ordinal));
        Assert.DoesNotContain("s3cret", refusal, StringComparison.Ordinal);
        Assert.DoesNotContain("other secret", refusal, StringComparison.Ordinal);
        Assert.EndsWith(".", refusal, StringComparison.Ordinal);
    }
}
