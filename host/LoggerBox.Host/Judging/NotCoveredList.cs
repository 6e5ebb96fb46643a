using System.Collections.Generic;

namespace LoggerBox.Host.Judging;

/// <summary>Causes of lack of power that rpm and three pressures cannot see, each with what to do instead.</summary>
public static class NotCoveredList
{
    public static readonly IReadOnlyList<NotCovered> All =
    [
        new("stator-seized", "A stator's one-way clutch that is seized stalls normally; the truck lacks top speed and overheats.", "Compare top speed and full-throttle speed in gear with the drive wheels clear; watch how fast the oil heats while driving."),
        new("brake-dragging", "A dragging service or parking brake loads the truck, not the test.", "Let the truck roll freely or tow it with a pull gauge; compare hub temperatures after a drive."),
        new("axle-fault", "Differential, reduction gears and wheel bearings lie behind what is measured.", "With the drive wheels clear, turn each by hand, listen, and check the axle oil for metal."),
        new("lubrication-starved", "Lubrication flow has no gauge in this test.", "Gauge the lubrication port at the speed the manual names; check the cooler return flow."),
        new("clutch-dragging", "A clutch that does not release drags in neutral and heats; pressures and stall look normal.", "In neutral with the drive wheels clear and at fast idle, see whether they turn or resist the brake."),
        new("wrong-fluid", "Oil of the wrong kind can hold pressure and still make plates slip or chatter.", "Ask what was filled in and when; compare look and smell with fresh oil of the kind the manual names."),
    ];
}
