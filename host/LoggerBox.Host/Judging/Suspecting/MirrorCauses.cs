using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>The same cause in the other direction.</summary>
public static class MirrorCauses
{
    /// <summary>Null where the cause has no direction.</summary>
    public static Cause? Of(Cause cause) => cause switch
    {
        Cause.ForwardClutchLeak => Cause.ReverseClutchLeak,
        Cause.ReverseClutchLeak => Cause.ForwardClutchLeak,
        Cause.ForwardFeedOpen => Cause.ReverseFeedOpen,
        Cause.ReverseFeedOpen => Cause.ForwardFeedOpen,
        Cause.ForwardClutchSlip => Cause.ReverseClutchSlip,
        Cause.ReverseClutchSlip => Cause.ForwardClutchSlip,
        _ => null,
    };
}
