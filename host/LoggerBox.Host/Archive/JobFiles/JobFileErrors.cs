namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>Why a job file is not taken, each as a sentence; nothing was written then.</summary>
internal static class JobFileErrors
{
    public static UserErrorException CannotRead(string path, string reason) =>
        new($"The job file {path} cannot be read ({reason.TrimEnd('.')}): check its path and that you may read it.");

    public static UserErrorException NoJobFile(string name) =>
        new($"{name} is no job file: nothing was imported; name a file that `loggerbox export JOB --out FILE{JobFileFormat.Extension}` wrote.");

    public static UserErrorException Damaged(string name) =>
        new($"The job file {name} was cut or damaged on its way: nothing was imported; have it sent again.");

    public static UserErrorException Newer(string name, int version) =>
        new($"The job file {name} is of version {version}, this program reads version {JobFileFormat.Version}: nothing was imported; install the newer program.");

    public static UserErrorException Unknown(string name, int section) =>
        new($"The job file {name} holds something that this program does not know (section {section}): nothing was imported; install the newer program.");

    public static UserErrorException Wrong(string name, string what) =>
        new($"The job file {name} is not in order ({what}): nothing was imported; have it exported again.");

    public static UserErrorException CannotExport(string job, string what) =>
        new($"Job {job} cannot be written as a job file ({what}): nothing was written; put it right with `loggerbox job`, or export its sessions one by one as .csv.");

    public static UserErrorException OtherBytes(string name, uint number, string there) =>
        new($"Session {number} of the job file {name} is in the archive as {there} with other bytes: nothing was imported; compare the two archives and keep both files.");
}
