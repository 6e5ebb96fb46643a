using System.Collections.Generic;

namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>A job as its file has it, but for the sessions' bytes, which stay in the file until they are wanted.</summary>
/// <param name="Job">Id and session ids are those of the archive that wrote it.</param>
internal sealed record JobFileContent(Job Job, IReadOnlyList<JobFileSession> Sessions, IReadOnlyList<Correction> Corrections, IReadOnlyList<ArchivedCalibration> Calibrations);

/// <param name="Id">In the archive that wrote it.</param>
/// <param name="Offset">Where its bytes begin in the file.</param>
/// <param name="Crc">CRC-32C of its bytes.</param>
internal sealed record JobFileSession(
    string Id,
    SessionIdentity Identity,
    SessionOrigin Origin,
    string Source,
    System.DateTimeOffset Stored,
    SessionRole Role,
    uint Crc,
    long Offset,
    int Length);
