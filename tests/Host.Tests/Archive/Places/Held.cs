using System;
using System.Data.Common;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>A change that is begun and never ended in order.</summary>
internal sealed class Held(DbConnection open, DbTransaction change) : IDisposable
{
    public void Dispose()
    {
        change.Dispose();
        open.Dispose();
    }
}
