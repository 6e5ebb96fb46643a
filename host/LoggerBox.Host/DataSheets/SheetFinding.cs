using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.DataSheets;

public enum FindingLevel
{
    /// <summary>The sheet can be used; something deserves a look.</summary>
    Warning,

    /// <summary>The sheet is refused.</summary>
    Error,
}

/// <param name="Line">Line in the data sheet file, from 1.</param>
/// <param name="Text">One sentence without the place, beginning with a small letter or a key's name.</param>
public sealed record SheetFinding(int Line, string Text, FindingLevel Level);

/// <summary>What was found wrong so far: reading goes on after a finding, so that one check shows all of them.</summary>
internal sealed class FindingList
{
    private readonly List<SheetFinding> findings = [];

    public IReadOnlyList<SheetFinding> InOrder => [.. findings.OrderBy(finding => finding.Line)];

    public bool HasErrors => findings.Exists(finding => finding.Level == FindingLevel.Error);

    public void Error(int line, string text) => findings.Add(new SheetFinding(line, text, FindingLevel.Error));

    public void Warning(int line, string text) => findings.Add(new SheetFinding(line, text, FindingLevel.Warning));
}
