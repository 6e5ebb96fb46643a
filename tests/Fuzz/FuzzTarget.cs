using System;
using LoggerBox.Host;

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

    /// <summary>Does a part of what a target does, which may be refused without ending the rest. Null when that is well.</summary>
    protected static string? Refusal(Action work)
    {
        ArgumentNullException.ThrowIfNull(work);
        try
        {
            work();
            return null;
        }
        catch (UserErrorException refusal)
        {
            return WrongSentence(refusal);
        }
    }

    /// <summary>What is wrong with a refusal as a person reads it.</summary>
    internal static string? WrongSentence(UserErrorException refusal)
    {
        string said = refusal.Message;
        bool isSentence = said.Length > 10 && said[^1] is '.' or '?' && !said.Contains("   at ", StringComparison.Ordinal) && !said.Contains("Exception", StringComparison.Ordinal);
        return isSentence ? null : $"a refusal that is no sentence: {said}";
    }

    protected virtual void Dispose(bool disposing)
    {
    }
}
