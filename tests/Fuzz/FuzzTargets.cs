using System;
using System.Collections.Generic;
using LoggerBox.Fuzz.Targets;

namespace LoggerBox.Fuzz;

public static class FuzzTargets
{
    /// <summary>All there are, by the name that the command line takes.</summary>
    public static IReadOnlyDictionary<string, Func<FuzzTarget>> ByName { get; } = new Dictionary<string, Func<FuzzTarget>>
    {
        ["frame"] = () => new FrameTarget(),
        ["record"] = () => new RecordTarget(),
        ["codec"] = () => new CodecTarget(),
        ["link"] = () => new LinkTarget(),
        ["card"] = () => new CardTarget(),
        ["session"] = () => new SessionTarget(),
        ["trace"] = () => new TraceTarget(),
        ["sheet"] = () => new SheetTarget(),
        ["archive"] = () => new ArchiveTarget(),
        ["jobfile"] = () => new JobFileTarget(),
    };
}
