using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.Releasing;

public enum GateStage
{
    /// <summary>Before the engine is started for a test.</summary>
    Opening,

    /// <summary>With the engine at idle, before the test that needs it.</summary>
    Idle,

    /// <summary>Before the truck goes back to work.</summary>
    Closing,
}

/// <summary>Something that a person looks at with his own eyes and answers for: no reading says it.</summary>
/// <param name="Code">As it is typed and stored.</param>
/// <param name="Name">In a list of some, for who types no codes.</param>
/// <param name="NoteWanted">What has to be written with it; empty where a name is enough.</param>
public sealed record Gate(string Code, GateStage Stage, string Name, string Text, string NoteWanted = "")
{
    /// <summary>The code of a release, which stands among a job's ticks but is given by closing the job.</summary>
    public const string ReleaseCode = "release";

    /// <summary>All, in the order of the work. Common practice of the trade; the truck's own manual and local safety law come before it.</summary>
    public static IReadOnlyList<Gate> All { get; } =
    [
        new("chocks", GateStage.Opening, "wheels chocked", "Every wheel that stays on the floor is chocked."),
        new("parking-brake", GateStage.Opening, "parking brake on and controls in neutral", "Parking brake on, load off, forks down, controls in neutral."),
        new("area-clear", GateStage.Opening, "place clear in front and behind", "A truck's length is clear in front and behind; nobody between truck and wall."),
        new("ventilation", GateStage.Opening, "ventilation", "Exhaust gas is led away; the place is ventilated."),
        new("dry-at-idle", GateStage.Idle, "hoses dry at idle", "Hoses and fittings are dry at idle: looked for with cardboard, never with a hand."),
        new("oil-read", GateStage.Idle, "oil level and temperature", "Transmission oil level and temperature are read, as the manual says: most say hot, at idle.", "level, temperature, and how they were read"),
        new("stands", GateStage.Idle, "rated stands for holds in gear", "For holds in gear: drive wheels clear on rated stands, the wheels that stay down blocked."),
        new("truck-down", GateStage.Idle, "truck down for stalls", "For stalls, governed speed and relief: truck down, chocked, parking brake on, nobody in the way."),
        new("zero-again", GateStage.Closing, "zero read again", "Zero was read again: engine off, pressure gone."),
        new("plugs-dry", GateStage.Closing, "test ports plugged and dry", "Test ports are plugged, tight, and dry with the engine running: cardboard, never a hand."),
        new("oil-after", GateStage.Closing, "oil level after the test", "Transmission oil level is right after the test."),
        new("chocks-away", GateStage.Closing, "chocks and stands away", "Chocks and stands are away, truck down."),
        new("road-test", GateStage.Closing, "road test", "Road tested: brakes, steering, both directions, lift and tilt."),
    ];

    /// <summary>Null: this program knows none of that code.</summary>
    public static Gate? Find(string code) => All.FirstOrDefault(gate => gate.Code == code);
}
