using System;
using System.Linq;
using LoggerBox.PowerLoss.Faults;

namespace LoggerBox.PowerLoss;

/// <summary>A campaign of seconds: every kind of page and every fault, each byte and bit of what is written, with wider strides three cuts deep.</summary>
public static class ShortCampaign
{
    /// <summary>Draws for random bits, and the strides of repeated cuts.</summary>
    public static Campaign Make(int seed) => new(
        Examples.EveryKindOfPage(seed), seed, Campaign.Faults(draws: 4, placeStride: 16, new RepeatedCuts(firstStride: 96, secondStride: 16, thirdStride: 128)));

    /// <summary>What it finds; a log that refuses what it must take has broken its promise, too.</summary>
    public static string[] Violations(int seed)
    {
        try
        {
            Campaign campaign = Make(seed);
            campaign.Run(threads: 1);
            return campaign.Violations.ToArray();
        }
        catch (Exception refused)
        {
            return [refused.Message];
        }
    }
}
