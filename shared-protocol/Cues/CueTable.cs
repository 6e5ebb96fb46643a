using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Cues
{
    /// <summary>
    /// Every cue once, for the logger that plays it and for paper that explains it; hardware-notes/cues.md is the same table with words, and a test compares them. Ranks: 9 let go now, 8 do not go on,
    /// 7 nothing is being stored or time is short, 6 a reading is lost or due, 5 an answer or act is due, 4 and below it is good to know.
    /// </summary>
    public static class CueTable
    {
        public static readonly CueSignal[] All =
        {
            new CueSignal(Cue.Armed, 3, "rUn ", "#", "#", false),
            new CueSignal(Cue.PlanChosen, 3, "P###", "#", "#.#", false),
            new CueSignal(Cue.ZeroTaken, 4, "=0= ", "#####", "#####", false),
            new CueSignal(Cue.ZeroAgain, 5, "-0- ", "#.#", "#.#.......", true),
            new CueSignal(Cue.SpeedHigher, 4, "^^^^", "#..#", "##........", false),
            new CueSignal(Cue.SpeedLower, 4, "____", "#..#..#", "........##", false),
            new CueSignal(Cue.Captured, 5, "donE", "##########", "##########", false),
            new CueSignal(Cue.NotCapturedTooShort, 5, "Shrt", "#.#.#", "#.#.#", false),
            new CueSignal(Cue.NotCapturedUnsteady, 5, "UnSt", "#.#.#", "#.#.#..#", false),
            new CueSignal(Cue.NotCapturedSpeed, 5, "SPEd", "#.#.#", "#.#.#..#.#", false),
            new CueSignal(Cue.Borderline, 5, "2nd ", "#####..#####", "#####..#####", false),
            new CueSignal(Cue.EngagementCaptured, 3, "CLUt", "##", "##", false),
            new CueSignal(Cue.StallTarget, 6, "", "##", "##", false),
            new CueSignal(Cue.StallWarn, 7, "", "#.", "#.", true),
            new CueSignal(Cue.StallStop, 9, "StoP", "##########", "#.", true),
            new CueSignal(Cue.CoolDown, 6, "CooL", "#####.....#####", "#####.....#####", false),
            new CueSignal(Cue.CoolDownOver, 4, "rEdY", "##..##", "##..##", false),
            new CueSignal(Cue.Overspeed, 9, "FASt", "###.", "###.", true),
            new CueSignal(Cue.DriveCut, 5, "CUt ", "#...#...#", "#...#...#", false),
            new CueSignal(Cue.PressureTooLowToStall, 8, "Lo P", "####..", "####..", true),
            new CueSignal(Cue.MainFarTooHigh, 8, "HI P", "####..##..", "####..##..", true),
            new CueSignal(Cue.ReliefStop, 8, "rEL-", "##########.##########", "##########.##########", false),
            new CueSignal(Cue.LoopFault, 6, "LooP", "##.#", "##.#......", true),
            new CueSignal(Cue.ReadingsLost, 6, "Ad--", "##.##", "##.##.....", true),
            new CueSignal(Cue.GearInputsBoth, 6, "F-r ", "##.#.#", "##.#.#....", true),
            new CueSignal(Cue.SetUpClearOrDown, 5, "CL-d", "#.##", "#.##......", true),
            new CueSignal(Cue.StepsMissing, 5, "n###", "#.....#", "#.....#", false),
            new CueSignal(Cue.AllCaptured, 5, "ALL ", "##########..##########", "##########..##########", false),
            new CueSignal(Cue.LowSupply, 7, "bAtt", "#....", "#....", true),
            new CueSignal(Cue.StoreFull, 7, "FULL", "#####.#", "#####.#...", true),
            new CueSignal(Cue.StoreFailed, 7, "CArd", "#####.#.#", "#####.#.#.", true),
            new CueSignal(Cue.LinkAlive, 2, "PC  ", "", "#.#.#.#", false),
            new CueSignal(Cue.ClockNotSet, 3, "dAtE", "#.##", "#.##", false),
            new CueSignal(Cue.SettingsDamaged, 6, "CAL-", "##.###", "##.###....", true),
            new CueSignal(Cue.Restarted, 4, "rESt", "#..##", "#..##", false),
        };

        /// <summary>Null for a cue that has no signal: <see cref="Cue.None"/>, or one of a newer protocol.</summary>
        public static CueSignal? Find(Cue cue)
        {
            for (int i = 0; i < All.Length; i++)
            {
                if (All[i].Cue == cue)
                {
                    return All[i];
                }
            }

            return null;
        }
    }
}
