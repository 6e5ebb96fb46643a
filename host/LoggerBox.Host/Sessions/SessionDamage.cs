namespace LoggerBox.Host.Sessions;

/// <summary>What of a session's bytes could not be read; the bytes themselves stay as they were received.</summary>
/// <param name="Records">Records that are missing by their sequence, or whose content cannot be.</param>
/// <param name="Bytes">Bytes that belong to no whole record; a cut session ends with some.</param>
/// <param name="UnknownRecords">Whole records of a code that this program does not know: skipped, no damage.</param>
public sealed record SessionDamage(long Records = 0, long Bytes = 0, long UnknownRecords = 0)
{
    public bool Any => Records > 0 || Bytes > 0;
}
