using System;
using System.IO;

namespace LoggerBox.Host.Link;

/// <summary>A symlink to a pseudo-terminal: the terminal's own name changes at each start, the link's stays.</summary>
public sealed class PortLink : IDisposable
{
    private readonly string path;
    private readonly string target;

    private PortLink(string path, string target)
    {
        this.path = path;
        this.target = target;
    }

    /// <summary>Makes the link, or turns one left over from an earlier start to the new terminal.</summary>
    /// <exception cref="UserErrorException">Something else is at that place, or it cannot be written.</exception>
    public static PortLink Create(string path, string target)
    {
        string fresh = $"{path}.{Environment.ProcessId}";
        try
        {
            FileInfo there = new(path);
            if ((there.Exists || Directory.Exists(path)) && there.LinkTarget is null)
            {
                throw new UserErrorException($"{path} exists and is no link: remove it, or name another place with --link.");
            }

            // Made aside and moved over: who opens the link meanwhile finds the old one or the new one, never none.
            File.Delete(fresh);
            File.CreateSymbolicLink(fresh, target);
            File.Move(fresh, path, overwrite: true);
            return new PortLink(path, target);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"The link {path} cannot be made ({error.Message.TrimEnd('.')}): name a place that you may write with --link.");
        }
    }

    /// <summary>Removes the link, unless another start has turned it to its own terminal.</summary>
    public void Dispose()
    {
        try
        {
            if (new FileInfo(path).LinkTarget == target)
            {
                File.Delete(path);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // A link left behind does no harm: the next start turns it.
        }
    }
}
