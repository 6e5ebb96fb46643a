using System;

namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>What JOBFILE.md says in numbers.</summary>
public static class JobFileFormat
{
    /// <summary>The ending of a job file's name.</summary>
    public const string Extension = ".lbjob";

    internal const ushort Version = 1;
    internal const int HeaderLength = 12;
    internal const int SectionHeadLength = 5;
    internal const int CrcLength = 4;

    /// <summary>From this section on a reader skips what it does not know; below, it refuses.</summary>
    internal const JobFileSection FirstOptional = (JobFileSection)128;

    // Limits of a reader: a file that claims more is refused before anything is allocated for it.
    internal const int MostSections = 10_000;
    internal const int LongestSmallSection = 2 << 20;
    internal const int LongestText = 1 << 20;
    internal const int MostSmallBytes = 16 << 20;

    /// <summary>Separators of folders and drives on one system or another.</summary>
    internal static readonly char[] InNoFileName = ['/', '\\', ':'];

    internal static ReadOnlySpan<byte> Magic => "LgBxJob\u001A"u8;
}

internal enum JobFileSection : byte
{
    Job = 1,
    Sheet = 2,
    Session = 3,
    Correction = 4,

    Gate = 128,
    Calibration = 129,
    End = 255,
}
