using System;
using System.Linq;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.BoardParts.Operation;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Faults;

public class ContactFaultTests
{
    [Fact]
    public void Both_direction_inputs_on_are_no_gear_a_cue_and_an_event()
    {
        using BoardBench bench = new BoardBench().Record();
        bench.Program.Levels.Forward = true;
        bench.Run(3);
        bench.Program.Levels.Reverse = true;
        bench.Run(3);
        bench.Program.Levels.Forward = false;
        bench.Run(3);
        bench.Press(2);
        ReadSession session = bench.Session();
        Gear[] tags = session.Events.Where(one => one.Kind == EventKind.GearTag).Select(one => (Gear)one.Value).ToArray();
        Assert.Equal([Gear.Neutral, Gear.Forward, Gear.Unknown, Gear.Reverse], tags);
        Assert.Equal(new[] { (BoardFault.GearInputs, 1), (BoardFault.GearInputs, 0) }, session.Faults);
        Assert.Contains(Cue.GearInputsBoth, session.Cues);
    }

    [Fact]
    public void A_lever_that_bounces_is_one_change_of_gear()
    {
        Random chance = new(5);
        using BoardBench bench = new BoardBench().Record();
        for (int i = 0; i < 30; i++)
        {
            bench.Program.Levels.Forward = chance.Next(2) == 0;
            bench.Run(0.01);
        }

        bench.Program.Levels.Forward = true;
        bench.Run(4);
        bench.Press(2);
        Assert.InRange(bench.Session().Events.Count(one => one.Kind == EventKind.GearTag), 2, 4);
        Assert.Equal((int)Gear.Forward, bench.Session().Events.Last(one => one.Kind == EventKind.GearTag).Value);
    }

    [Fact]
    public void A_button_that_bounces_is_one_press()
    {
        using BoardBench bench = new BoardBench().Record();
        for (int press = 0; press < 5; press++)
        {
            for (int i = 0; i < 6; i++)
            {
                bench.Program.Levels.Button = i % 2 == 0;
                bench.Run(0.01);
            }

            bench.Program.Levels.Button = true;
            bench.Run(0.3);
            for (int i = 0; i < 6; i++)
            {
                bench.Program.Levels.Button = i % 2 != 0;
                bench.Run(0.01);
            }

            bench.Program.Levels.Button = false;
            bench.Run(1);
        }

        bench.Press(2);
        int[] presses = bench.Session().Events.Where(one => one.Kind == EventKind.Button).Select(one => one.Value).ToArray();
        Assert.Equal([1, 1, 1, 1, 1, 2], presses);
    }

    [Fact]
    public void A_button_that_hangs_ends_one_session_and_begins_none()
    {
        using BoardBench bench = new BoardBench().Record();
        bench.Program.Levels.Button = true;
        bench.Run(60);
        Assert.Equal(LoggerState.Ended, bench.Program.State);
        Assert.Equal(1, bench.Program.Log.Sessions.Count);
        Assert.Equal(SessionEndReason.Button, bench.Session().End!.Reason);
    }
}
