using System.IO;

namespace LoggerBox.Host.Archive;

/// <summary>The schema's version, the same in both databases, and the scripts that lead to it: each makes the version before it into its own.</summary>
internal static class ArchiveSchema
{
    public const long Version = 4;

    /// <param name="store">The folder of its database.</param>
    public static string Script(string store, long version)
    {
        using Stream resource = typeof(ArchiveSchema).Assembly.GetManifestResourceStream($"LoggerBox.Host.Archive.{store}.Schema.{version:000}.sql")!;
        using StreamReader reader = new(resource);
        return reader.ReadToEnd();
    }
}
