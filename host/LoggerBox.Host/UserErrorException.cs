using System;

namespace LoggerBox.Host;

/// <summary>
/// Something that the person at the keyboard can put right. The message is a whole sentence: what happened, where (file, line, port), what to do next.
/// </summary>
public sealed class UserErrorException : Exception
{
    /// <param name="usage">True where the command line itself is wrong: exit status 2 instead of 1.</param>
    public UserErrorException(string message, bool usage = false)
        : base(message)
    {
        Usage = usage;
    }

    public bool Usage { get; }
}
