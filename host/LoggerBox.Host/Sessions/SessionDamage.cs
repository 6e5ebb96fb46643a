namespace LoggerBox.Host.Sessions;

/// <summary>What of a session's bytes could not be read; the bytes themselves stay as they were received.</summary>
/// <param name="Records">Records whose check sum or content was wrong.</param>
/// <param name="Bytes">Bytes that belong to no readable record.</param>
/// <param name="UnknownRecords">Whole records of a code that this program does not know: skipped, no damage.</param>
public sealed record SessionDamage(int Records = 0, long Bytes = 0, int UnknownRecords = 0)
{
    public bool Any => Records > 0 || Bytes > 0;
}
