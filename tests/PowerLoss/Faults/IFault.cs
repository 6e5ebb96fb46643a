using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>One way in which cards go wrong.</summary>
public interface IFault
{
    string Name { get; }

    /// <summary>Tries every state of one step. The card holds what was there before it, and does so again afterwards.</summary>
    void Try(Bench bench, IReadOnlyList<Step> steps, int index);
}
