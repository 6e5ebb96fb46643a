using System.Linq;
using LoggerBox.Host;
using LoggerBox.TruckSimulator.Faults;

namespace LoggerBox.App.Simulation;

/// <summary>A cause by its code, or the sentence that says what there is instead.</summary>
internal static class Causes
{
    public static SimulatedCause Find(string code)
    {
        if (SimulatedCauses.TryGet(code, out SimulatedCause? cause))
        {
            return cause;
        }

        string known = string.Join(", ", SimulatedCauses.All.Select(one => one.Code));
        throw new UserErrorException(Messages.UnknownCause(code, known), usage: true);
    }
}
