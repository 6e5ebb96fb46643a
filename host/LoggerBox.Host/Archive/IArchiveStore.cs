using System;
using System.Collections.Generic;
using System.Data.Common;

namespace LoggerBox.Host.Archive;

/// <summary>The database that an archive lies in: what SQLite and PostgreSQL do each in a way of its own. Tables, columns and statements are the same.</summary>
internal interface IArchiveStore : IDisposable
{
    /// <summary>Where the archive is, for people to read: never with a password.</summary>
    string Name { get; }

    DbConnection Connection { get; }

    /// <summary>Begins a change, and waits for the other program that is making one: there is one at a time.</summary>
    DbTransaction BeginChange();

    /// <summary>Until it ends, all that is read is of one moment.</summary>
    DbTransaction BeginLook();

    /// <summary>What an error of the database means to a person. Null: it is none of the database's.</summary>
    UserErrorException? Told(Exception error);

    /// <summary>What is wrong below the sessions, in the database's own order.</summary>
    List<string> StructureFaults();

    /// <summary>Copies itself as it is at one moment into a new file. False: it has no way of its own to do that.</summary>
    bool CopyItself(string path);
}

/// <summary>What an archive is opened for.</summary>
internal enum ArchiveUse
{
    /// <summary>To be made where there is none.</summary>
    Create,

    /// <summary>It must be there: a mistyped name makes no empty archive.</summary>
    Change,

    /// <summary>It must be there, and is read as it is where it cannot be written.</summary>
    Look,
}
