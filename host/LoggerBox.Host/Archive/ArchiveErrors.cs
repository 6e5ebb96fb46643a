namespace LoggerBox.Host.Archive;

/// <summary>What can be wrong with what an archive holds, each as a sentence with the archive's name and the next thing to do.</summary>
internal static class ArchiveErrors
{
    public static UserErrorException Newer(string path, long version) =>
        new($"The archive {path} was written by a newer program (schema {version}, this program knows {ArchiveSchema.Version}): nothing was changed; install the newer program.");

    public static UserErrorException NoSuchSession(string path, string id) =>
        new($"The archive {path} holds no session {id}: `loggerbox sessions` lists those it holds (S1, S2, ...).");

    public static UserErrorException NoSuchJob(string path, string id) =>
        new($"The archive {path} holds no job {id}: `loggerbox job show` lists those it holds (J1, J2, ...).");

    public static UserErrorException WrittenInClosedJob(string id, string field) => new(
        $"Job {id} is closed and has its {field}: nothing was written. Put it right with `loggerbox job correct {id} --{field} TEXT --by NAME`, which is a new row with that name.");

    public static UserErrorException NothingCorrected(string subject, string field) =>
        new($"The {field} of {subject} is that already: nothing was written; `loggerbox job show` shows what stands.");

    public static UserErrorException Incomplete(string path, string id, long received, long length) =>
        new($"Session {id} in {path} has arrived only in part ({received} of {length} bytes): connect the logger and run `loggerbox fetch` again.");

    public static UserErrorException DoesNotAgree(string source, uint session) =>
        new($"Session {session}, read twice from {source}, does not agree with what is stored there: the logger's card may be failing; pull the card and keep it.");

    public static UserErrorException DamagedRow(string path) =>
        new($"The archive {path} is damaged (a row holds what cannot stand there): stop using it and restore it from a copy.");

    public static UserErrorException DamagedSession(string path, string id) =>
        new($"Session {id} in {path} is damaged: its bytes are not those that arrived; restore the archive from a copy, or fetch the session again into another one.");

    public static UserErrorException JobClosed(string id) =>
        new($"Job {id} is closed and takes no more sessions: open a new job with `loggerbox job new`.");

    public static UserErrorException JobText(string what) => new($"The work order says too much ({what}): nothing was written; write it shorter.");
}
