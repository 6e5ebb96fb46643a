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
            yield return new ValidityNote("sheet-from-jobs", ValidityEffect.Note, Step.None, $"The limits were drawn from the shop's own healthy jobs {sheet.DrawnFromJobs}, they are not the manual's: outside means unlike those trucks. Look the manual up before anything is taken apart.");
        }
    }
}
