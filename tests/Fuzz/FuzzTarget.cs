using System;

namespace LoggerBox.Fuzz;

/// <summary>Something that takes bytes from outside. One input comes from one seed, whatever was tried before.</summary>
public abstract class FuzzTarget : IDisposable
{
    /// <summary>What one input may allocate, bytes on the managed heap, the target's own checks included.</summary>
    public virtual long MostBytes => 16 << 20;

    /// <summary>
    /// Makes an input and gives it to the program. Null when all is well; a UserErrorException is a refusal, which is well too.
    /// </summary>
    /// <returns>What is wrong.</returns>
    public abstract string? Try(Random random);

    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing)
    {
    }
}
