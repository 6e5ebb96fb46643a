using System;
using LoggerBox.Host.Archive;

namespace LoggerBox.Host.Subjects;

/// <summary>A comparison needs one truck, which its serial tells where both work orders have one.</summary>
public static class SameTruck
{
    /// <exception cref="UserErrorException">Two serials.</exception>
    public static void Demand(Subject before, Subject after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        string one = SerialOf(before.Job);
        string other = SerialOf(after.Job);
        if (one.Length > 0 && other.Length > 0 && !string.Equals(one, other, StringComparison.OrdinalIgnoreCase))
        {
            throw new UserErrorException(
                $"{before.Title} is of the truck with serial {one}, {after.Title} of the one with serial {other}: a comparison needs one truck. Put the serial right with `loggerbox job correct JOB --serial TEXT --by NAME`, or name its other job.");
        }
    }

    private static string SerialOf(Job? job) => job?.Details.Serial ?? "";
}
