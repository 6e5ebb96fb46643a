using System.Linq;
using LoggerBox.Capture.Storage;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>What may be missing when a page that was written is not there, or damaged: the records that it holds, and no other.</summary>
public static class Aftermath
{
    private const int Payload = Card.Page - PageHeader.Length;

    /// <summary>The promises of a later moment, less what a whole page of this step holds.</summary>
    public static Ledger WithoutPage(Ledger later, Step step, int page) => Without(later, step, page * Payload, (page + 1) * Payload);

    /// <summary>The promises of a later moment, less what one byte of this step's write belongs to.</summary>
    public static Ledger WithoutByte(Ledger later, Step step, int at)
    {
        int page = at / Card.Page;
        int within = (at % Card.Page) - PageHeader.Length;
        return within < 0 ? WithoutPage(later, step, page) : Without(later, step, (page * Payload) + within, (page * Payload) + within + 1);
    }

    private static Ledger Without(Ledger later, Step step, int from, int to)
    {
        Ledger ledger = later.Copy();
        if (ReferenceEquals(later, step.After))
        {
            // Where the first page of a new log is the one that is lost, the old one behind it is found again.
            ledger.Sessions.AddRange(step.During.Sessions.Where(session => session.Free));
        }

        if (step.Note != 0)
        {
            ledger.Find(step.Note)!.SureConfirmed = false;
            return ledger;
        }

        Promise promise = ledger.Find(step.Session)!;
        int end = step.SessionOffset + from >= step.SessionEnd ? 0 : int.Min(step.SessionOffset + to, step.SessionEnd);
        promise.MayLose(step.SessionOffset + from, end);
        return ledger;
    }
}
