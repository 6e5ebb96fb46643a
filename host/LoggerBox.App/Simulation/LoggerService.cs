using System.Threading;
using LoggerBox.Capture.Link;
using LoggerBox.Host.Link;

namespace LoggerBox.App.Simulation;

/// <summary>Keeps the virtual logger answering on its line until it is told to stop. One thread: the real logger has no more.</summary>
internal sealed class LoggerService
{
    private const int MillisecondsBetweenLooksAtTheStop = 50;
    private const int FramesBetweenSamples = 8;

    private readonly VirtualLogger logger;
    private readonly LinePort port;
    private readonly LinkAnswers answers;

    public LoggerService(VirtualLogger logger, IDeviceLine line)
    {
        this.logger = logger;
        port = new LinePort(line);
        answers = new LinkAnswers(logger.Log, port, VirtualLogger.LoggerId, logger.BootCount) { Live = logger.Live };
        answers.Calibrations.CopyFrom(logger.Header);
    }

    /// <summary>Answers only; what is recorded is on the card already.</summary>
    public void Answer(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            if (!AnswerOnce())
            {
                port.Wait(MillisecondsBetweenLooksAtTheStop);
            }
        }
    }

    /// <summary>Records in real time and answers in between, until the test at the truck is over.</summary>
    /// <param name="bench">The pump that its transducers hang on in place of the truck.</param>
    public void Record(CancellationToken stop, BenchPump? bench = null)
    {
        var clock = System.Diagnostics.Stopwatch.StartNew();
        long start = logger.NowMicroseconds;
        while (!stop.IsCancellationRequested && !logger.Finished)
        {
            long ahead = logger.NowMicroseconds - start - (long)clock.Elapsed.TotalMicroseconds;
            if (ahead <= 0)
            {
                logger.BenchPascal = bench?.Pascal(logger.NowMicroseconds);
                logger.Advance();
            }

            // A visitor that asks for much must not keep the logger from its next sample.
            for (int frame = 0; frame < FramesBetweenSamples && AnswerOnce(); frame++)
            {
            }

            if (ahead > 1000)
            {
                port.Wait((int)(ahead / 1000));
            }
        }
    }

    private bool AnswerOnce()
    {
        bool busy = answers.Step(logger.NowMicroseconds, logger.UtcSeconds);
        if (answers.ClockArrived)
        {
            answers.ClockArrived = false;
            logger.UtcSeconds = answers.UtcSeconds;
        }

        if (answers.PlanArrived)
        {
            answers.PlanArrived = false;
            logger.Settings.Keep(answers.Plan);
        }

        if (answers.Calibrations.Arrived)
        {
            answers.Calibrations.Arrived = false;
            logger.Settings.Keep(answers.Calibrations);
        }

        return busy;
    }
}
