namespace LoggerBox.PowerLoss.SeededBugs;

/// <summary>One line of the real storage sources, and what a tired programmer might have written instead.</summary>
/// <param name="Promise">
/// Which promise it breaks: 1 nothing wrong is given out, 2 what was stored survives, 3 recovery is one bounded pass, 4 damage is a gap of
/// known length, 5 a full card stops and gives up nothing that the host does not have.
/// </param>
public sealed record SeededBug(string Name, int Promise, string File, string Line, string Instead)
{
    public override string ToString() => $"P{Promise}: {Name}";
}
