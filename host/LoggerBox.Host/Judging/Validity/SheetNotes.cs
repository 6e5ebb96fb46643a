using System.Collections.Generic;
using LoggerBox.Host.DataSheets;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>What bears on the limits themselves.</summary>
public static class SheetNotes
{
    public static IEnumerable<ValidityNote> Of(DataSheet sheet)
    {
        if (sheet.DrawnFromJobs.Length > 0)
        {
            yield return new ValidityNote("sheet-from-jobs", ValidityEffect.Note, Step.None, Sentences.LimitsDrawnFromJobs(sheet.DrawnFromJobs));
        }
    }
}
