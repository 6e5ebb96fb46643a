using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.PowerLoss;

/// <summary>All that was promised at one moment.</summary>
public sealed class Ledger
{
    public List<Promise> Sessions { get; } = [];

    public Promise? Find(uint number)
    {
        foreach (Promise promise in Sessions)
        {
            if (promise.Number == number)
            {
                return promise;
            }
        }

        return null;
    }

    public Ledger Copy()
    {
        Ledger copy = new();
        copy.Sessions.AddRange(Sessions.Select(session => session.Copy()));
        return copy;
    }

    /// <summary>While a call runs: what was sure before it still is, what it will make sure may already be.</summary>
    public static Ledger During(Ledger before, Ledger after)
    {
        Ledger during = after.Copy();
        foreach (Promise promise in during.Sessions)
        {
            Promise? earlier = before.Find(promise.Number);
            promise.Sure = earlier?.Sure ?? 0;
            promise.SureEnded = earlier?.SureEnded ?? false;
            promise.SureConfirmed = earlier?.SureConfirmed ?? false;
        }

        foreach (Promise given in before.Sessions.Where(session => after.Find(session.Number) is null))
        {
            Promise free = given.Copy();
            free.Free = true;
            during.Sessions.Add(free);
        }

        return during;
    }

    /// <summary>
    /// Where pages or units came in any order, what was being written may hold whole records behind spoiled ones: those are found, and what
    /// is before them is damage.
    /// </summary>
    public Ledger Torn()
    {
        Ledger torn = Copy();
        foreach (Promise promise in torn.Sessions)
        {
            promise.MayLose(promise.Sure, promise.Possible);
        }

        return torn;
    }
}
