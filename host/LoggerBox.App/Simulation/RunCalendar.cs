using System;

namespace LoggerBox.App.Simulation;

/// <summary>
/// The invented shop's calendar: every run has its own day and minute, always the same, so that a run is the same to the byte
/// and two runs are told apart by their date.
/// </summary>
internal static class RunCalendar
{
    private const int Days = 250;
    private const int FirstMinute = 8 * 60;
    private const int Minutes = 480;

    // The FNV-1a hash, 32 bit: string.GetHashCode differs from process to process.
    private const uint HashStart = 2166136261;
    private const uint HashFactor = 16777619;

    private static readonly DateTimeOffset FirstDay = new(2026, 1, 5, 0, 0, 0, TimeSpan.Zero);

    public static uint StartUtcSeconds(string cause, int seed)
    {
        uint hash = HashStart;
        foreach (char letter in FormattableString.Invariant($"{cause}/{seed}"))
        {
            hash = unchecked((hash ^ letter) * HashFactor);
        }

        uint slot = hash % (Days * Minutes);
        return (uint)FirstDay.AddDays(slot / Minutes).AddMinutes(FirstMinute + slot % Minutes).ToUnixTimeSeconds();
    }
}
