using System;
using System.Threading;
using System.Threading.Tasks;
using Xunit;

namespace LoggerBox.Shop.Tests;

/// <summary>What is made once and kept, while several ask.</summary>
public sealed class RecentTests
{
    [Fact]
    public async Task Who_asks_for_the_same_waits_for_it_and_who_asks_for_something_else_does_not()
    {
        var recent = new Recent<string, string>(_ => 1, 10);
        using var mayEnd = new ManualResetEventSlim();
        using var hasBegun = new ManualResetEventSlim();
        int made = 0;
        string Make()
        {
            Interlocked.Increment(ref made);
            hasBegun.Set();
            mayEnd.Wait();
            return "slow";
        }

        Task<string> first = Task.Run(() => recent.Find("one", Make));
        hasBegun.Wait();
        Task<string> second = Task.Run(() => recent.Find("one", Make));
        Assert.Equal("other", recent.Find("two", () => "other"));
        Assert.False(first.IsCompleted || second.IsCompleted);
        mayEnd.Set();
        Assert.Equal(["slow", "slow"], await Task.WhenAll(first, second));
        Assert.Equal(1, made);
    }

    [Fact]
    public void What_was_asked_for_longest_ago_makes_room_and_the_newest_stays_however_large()
    {
        var recent = new Recent<int, string>(size => size, 10);
        int made = 0;
        string Find(int size) => recent.Find(size, () => $"{size}, {++made}");
        Assert.Equal("4, 1", Find(4));
        Assert.Equal("5, 2", Find(5));
        Assert.Equal("4, 1", Find(4));
        Assert.Equal("6, 3", Find(6));
        Assert.Equal("4, 1", Find(4));
        Assert.Equal("5, 4", Find(5));
        Assert.Equal("20, 5", Find(20));
        Assert.Equal("20, 5", Find(20));
        Assert.Equal("5, 6", Find(5));
    }

    [Fact]
    public void What_could_not_be_made_is_tried_again()
    {
        var recent = new Recent<string, string>(_ => 1, 10);
        Assert.Throws<InvalidOperationException>(() => recent.Find("one", () => throw new InvalidOperationException()));
        Assert.Equal("made", recent.Find("one", () => "made"));
    }
}
