using LoggerBox.BoardParts.Link;
using LoggerBox.BoardParts.Supervision;
using Xunit;

namespace LoggerBox.Board.Tests.Parts;

public class SupervisionTests
{
    private const long Second = 1000000;

    [Fact]
    public void A_thread_that_beats_is_left_alone()
    {
        ThreadWatch watch = new(1);
        for (long now = 0; now < 60 * Second; now += Second)
        {
            watch.Beat(0, now);
            Assert.Equal(ThreadVerdict.Fine, watch.Judge(0, true, now + (4 * Second)));
        }
    }

    [Fact]
    public void A_thread_without_a_sign_restarts_the_board()
    {
        ThreadWatch watch = new(2);
        watch.Beat(0, Second);
        watch.Beat(1, 6 * Second);
        Assert.Equal(ThreadVerdict.BoardIsStuck, watch.Judge(0, true, (6 * Second) + 1));
        Assert.Equal(ThreadVerdict.Fine, watch.Judge(1, true, (6 * Second) + 1));
    }

    [Fact]
    public void A_thread_that_ended_is_started_again_but_not_for_ever()
    {
        ThreadWatch watch = new(1);
        for (int i = 1; i <= 3; i++)
        {
            Assert.Equal(ThreadVerdict.StartAgain, watch.Judge(0, false, i * Second));
        }

        Assert.Equal(ThreadVerdict.EndsTooOften, watch.Judge(0, false, 4 * Second));
        Assert.Equal(ThreadVerdict.StartAgain, watch.Judge(0, false, 100 * Second));
    }

    [Fact]
    public void A_queue_gives_what_it_took_in_order_and_takes_no_more_than_fits()
    {
        ByteQueue queue = new(10);
        byte[] given = [1, 2, 3, 4, 5, 6, 7];
        byte[] taken = new byte[20];
        for (int i = 0; i < 50; i++)
        {
            Assert.Equal(7, queue.Put(given, 0, 7));
            Assert.Equal(3, queue.Put(given, 0, 7));
            Assert.Equal(10, queue.Take(taken, 0, 20));
            Assert.Equal([1, 2, 3, 4, 5, 6, 7, 1, 2, 3], taken[..10]);
        }

        Assert.Equal(0, queue.Take(taken, 0, 20));
    }
}
