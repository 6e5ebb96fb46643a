using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Subjects;

/// <summary>The unit of pressures where no sheet is at hand: a shop reads its gauges in one.</summary>
public static class UsualUnit
{
    /// <summary>That of the newest job's data sheet; kPa where no job has one.</summary>
    /// <param name="jobs">Oldest first.</param>
    public static PressureUnit Of(IEnumerable<Job> jobs) => jobs.Reverse().Select(SheetOf).FirstOrDefault(sheet => sheet is not null)?.Unit ?? PressureUnit.Kilopascal;

    private static DataSheet? SheetOf(Job job)
    {
        try
        {
            return ArchivedSubjects.OwnSheet(job);
        }
        catch (UserErrorException)
        {
            // Whoever judges the job is told.
            return null;
        }
    }
}
