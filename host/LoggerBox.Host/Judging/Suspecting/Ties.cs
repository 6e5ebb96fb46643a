using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// Causes that speed and three pressures cannot tell apart, and the readings that would part them. Reasoned from the circuit and from
/// common practice, no published source.
/// </summary>
public static class Ties
{
    private static readonly Tie[] All =
    [
        // Converter starved in every gear: worn pump or open outlet, until the pump is so weak that main falls at speed, or surely at idle
        // in N. A little at idle in gear is no sign: what runs out through an open outlet is missing there as well.
        new([Cause.ConverterReliefOpen, Cause.LubePlugMissing, Cause.PumpWorn])
        {
            PartedWhereTold = [Observation.MainIdleNeutral],
            PartedWhereVeryLow = [Observation.MainIdleForward, Observation.MainIdleReverse],
            PartedWhereOff = [Observation.MainHoldNeutral, Observation.MainHoldForward, Observation.MainHoldReverse],
        },
        new([Cause.ConverterReliefOpen, Cause.LubePlugMissing]),

        // Nearly nothing in the converter: a pump that leaves no more at speed gives main far too little at idle.
        new([Cause.ConverterReliefOpen, Cause.LubePlugMissing, Cause.PumpWorn])
        {
            OnlyWhereVeryLow = [Observation.ConverterHoldNeutral],
            PartedWhereVeryLow = [Observation.MainIdleNeutral, Observation.MainIdleForward, Observation.MainIdleReverse],
            PartedWhereOff = [Observation.MainHoldNeutral, Observation.MainHoldForward, Observation.MainHoldReverse],
        },

        // Whatever keeps the oil in the converter: gauging the outlet as well as the inlet parts them.
        new([Cause.ConverterReliefClosed, Cause.CoolerRestricted]),

        // Main low at speed: the pump gets no more, or the regulator lets it go; noise, foam or a fall towards governed speed part them,
        // and so does a converter that gets its oil.
        new([Cause.StrainerRestricted, Cause.RegulatorLow])
        {
            PartedWhereOff =
            [
                Observation.MainIdleNeutral, Observation.MainGovernedAgainstHold, Observation.PressureScatter, Observation.ConverterIdleAgainstHold,
            ],
            PartedWhereSound = [Observation.ConverterHoldNeutral],
        },

        // Main low at speed and sound at idle: foam or a strainer that is full; level and look of the oil part them, and idle where it is low as well.
        new([Cause.StrainerRestricted, Cause.OilLowOrAerated])
        {
            PartedWhereOff = [Observation.MainIdleNeutral, Observation.MainIdleForward, Observation.MainIdleReverse],
        },

        // Both hold clutch pressure down behind a sound main: the inching link, taken off, parts them.
        new([Cause.ModulatorLow, Cause.InchingNotReleased]),

        // A clutch that stays empty: a plug that is missing, or a seal or piston that is gone.
        new([Cause.ForwardFeedOpen, Cause.ForwardClutchLeak]) { OnlyWhereVeryLow = [Observation.ClutchFilledForward, Observation.ClutchHoldForward] },
        new([Cause.ReverseFeedOpen, Cause.ReverseClutchLeak]) { OnlyWhereVeryLow = [Observation.ClutchFilledReverse, Observation.ClutchHoldReverse] },

        // An engine that gives too little and one that has to give too much elsewhere: run-up, drop and governed speed part them.
        new([Cause.EnginePowerLow, Cause.WorkHydraulicsLoading])
        {
            PartedWhereOff = [Observation.ReliefDrop],
            PartedWhereTold = [Observation.GovernedSpeed],
        },

        // A stall that is low beside a sound governed speed: too little torque, or a governor that gives too little of it under load. The drop
        // over relief parts them, and so does a stall that is too low for any droop.
        new([Cause.EnginePowerLow, Cause.GovernorDroop])
        {
            PartedWhereTold = [Observation.GovernedSpeed],
            PartedWhereSeen = [Observation.ReliefDrop],
            PartedWhereVeryLow = [Observation.StallForward, Observation.StallReverse],
            OnlyWhereOff = [Observation.StallForward, Observation.StallReverse],
        },

        // An engine that is very weak and a stator that slips, until run-up, relief drop or governed speed tell.
        new([Cause.EnginePowerLow, Cause.StatorSlipping])
        {
            OnlyWhereVeryLow = [Observation.StallForward, Observation.StallReverse],
            PartedWhereOff = [Observation.ReliefDrop],
            PartedWhereTold = [Observation.GovernedSpeed],
            PartedWhereSeen = [Observation.RunUpTime],
        },
    ];

    /// <param name="gearsUnknown">What joins two causes of one direction joins those of the other.</param>
    public static bool Joins(Cause one, Cause other, IReadOnlyList<Observed> observations, bool gearsUnknown)
    {
        ArgumentNullException.ThrowIfNull(observations);
        return Joins(one, other, observations)
            || (gearsUnknown && MirrorCauses.Of(one) is { } mirror && MirrorCauses.Of(other) is { } another && Joins(mirror, another, observations));
    }

    private static bool Joins(Cause one, Cause other, IReadOnlyList<Observed> observations) =>
        All.Any(tie => tie.Causes.Contains(one) && tie.Causes.Contains(other) && tie.Holds(observations));

    private sealed record Tie(Cause[] Causes)
    {
        private const double Surely = 0.8;

        public Observation[] PartedWhereOff { get; init; } = [];

        /// <summary>Off by more than the uncertainty.</summary>
        public Observation[] PartedWhereTold { get; init; } = [];

        public Observation[] PartedWhereVeryLow { get; init; } = [];

        /// <summary>Surely inside its limits.</summary>
        public Observation[] PartedWhereSound { get; init; } = [];

        public Observation[] PartedWhereSeen { get; init; } = [];

        public Observation[] OnlyWhereVeryLow { get; init; } = [];

        public Observation[] OnlyWhereOff { get; init; } = [];

        public bool Holds(IReadOnlyList<Observed> observations) =>
            observations.All(seen => !PartedWhereSeen.Contains(seen.Observation)
                && (!PartedWhereOff.Contains(seen.Observation) || seen.Strongest == Level.Normal)
                && (!PartedWhereSound.Contains(seen.Observation) || seen.Levels[(int)Level.Normal] < Surely)
                && (!PartedWhereTold.Contains(seen.Observation) || !seen.Telling)
                && (!PartedWhereVeryLow.Contains(seen.Observation) || seen.Strongest != Level.VeryLow))
            && (OnlyWhereOff.Length == 0 || observations.Any(seen => OnlyWhereOff.Contains(seen.Observation) && seen.Strongest != Level.Normal))
            && (OnlyWhereVeryLow.Length == 0 || observations.Any(seen => OnlyWhereVeryLow.Contains(seen.Observation) && seen.Strongest == Level.VeryLow));
    }
}
