using LoggerBox.Board.Tests.Bench;
using LoggerBox.BoardParts.Plans;
using LoggerBox.BoardParts.Settings;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Parts;

public class PlanTests
{
    [Fact]
    public void The_logger_keeps_sixteen_plans_and_more_over_a_restart()
    {
        MemoryFlash first = new(), second = new();
        PlanShelf shelf = new(new TwoCopies(first, second));
        for (int i = 1; i <= PlanShelf.Capacity; i++)
        {
            Assert.Equal(i, shelf.Put(new PlanRecord { Name = "truck " + i, GovernedTenths = 24000 + i }));
        }

        Assert.True(PlanShelf.Capacity >= 16);
        Assert.Equal(0, shelf.Put(new PlanRecord { Name = "one too many" }));
        PlanShelf again = new(new TwoCopies(first, second));
        Assert.True(again.Load());
        Assert.Equal(PlanShelf.Capacity, again.Count);
        Assert.Equal(("truck 16", 24016), (again[16].Name, again[16].GovernedTenths));
        Assert.Equal("", again[0].Name);
    }

    [Fact]
    public void A_plan_of_the_same_name_replaces_the_older_and_the_same_plan_is_not_written_again()
    {
        MemoryFlash first = new(), second = new();
        PlanShelf shelf = new(new TwoCopies(first, second));
        shelf.Put(new PlanRecord { Name = "truck", GovernedTenths = 24000 });
        Assert.Equal(1, shelf.Put(new PlanRecord { Name = "truck", GovernedTenths = 25000 }));
        int writes = first.Writes + second.Writes;
        Assert.Equal(1, shelf.Put(new PlanRecord { Name = "truck", GovernedTenths = 25000 }));
        Assert.Equal(writes, first.Writes + second.Writes);
        Assert.Equal(25000, shelf[1].GovernedTenths);
        Assert.Equal(1, shelf.Count);
    }

    [Fact]
    public void A_file_on_the_card_is_a_plan_record_and_any_damage_makes_it_none()
    {
        RecordWriter writer = new();
        int length = writer.Write(new PlanRecord { Name = "from the card", HoldTenths = 18000 }, 0, 0, 0);
        PlanRecord plan = new();
        Assert.True(PlanFile.TryRead(writer.Bytes, length, plan));
        Assert.Equal(("from the card", 18000), (plan.Name, plan.HoldTenths));
        for (int i = 0; i < length; i++)
        {
            byte[] damaged = [.. writer.Bytes];
            damaged[i] ^= 0x20;
            Assert.False(PlanFile.TryRead(damaged, length, plan));
        }

        Assert.False(PlanFile.TryRead(writer.Bytes, length - 1, plan));
    }

    [Fact]
    public void A_plan_outside_its_bounds_is_none_on_the_card_either()
    {
        RecordWriter writer = new();
        int length = writer.Write(new PlanRecord { Name = "blind", IdleMaxTenths = 50000 }, 0, 0, 0);
        Assert.False(PlanFile.TryRead(writer.Bytes, length, new PlanRecord()));
    }

    [Fact]
    public void The_plan_of_no_sheet_is_inside_the_bounds() => Assert.Equal(PlanFault.None, PlanBounds.Check(new PlanRecord()));
}
