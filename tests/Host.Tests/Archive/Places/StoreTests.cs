using System;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>Tests that hold in either database: a class for each inherits them.</summary>
public abstract class StoreTests(ArchivePlace place) : IDisposable
{
    protected ArchivePlace Place { get; } = place;

    public void Dispose()
    {
        Close();
        Place.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>What the tests keep open themselves.</summary>
    protected virtual void Close()
    {
    }
}
