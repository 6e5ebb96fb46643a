using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;

namespace LoggerBox.App.Cards;

/// <summary>Brings what a pulled card holds into the archive, by the same way as what comes by cable. The card learns nothing of it.</summary>
internal sealed class CardFetch
{
    private readonly CardFile card;
    private readonly CardSessions sessions;

    /// <exception cref="UserErrorException">All that is on the card is of a later version.</exception>
    public CardFetch(CardFile card)
    {
        this.card = card;
        sessions = new CardSessions(card);
        if (!sessions.All.Any() && sessions.Later.Count > 0)
        {
            throw new UserErrorException(Messages.LaterCard(card.Path, sessions.Later.Values.Max()));
        }
    }

    /// <exception cref="UserErrorException">The card was pulled; what had been read is in the archive.</exception>
    public CardResult Run(ArchiveFile archive, DateTimeOffset now, Action<IntakeProgress>? progress = null)
    {
        SessionIntake intake = new(archive, sessions, SessionOrigin.Fetched, now, progress);
        long lost = 0;
        foreach ((LoggedSession session, uint logger) in WithLogger())
        {
            if (sessions.IsGone(session))
            {
                throw sessions.Pulled(session);
            }

            if (session.Length > SessionIntake.LongestSession)
            {
                intake.Notes.Add(Messages.TooLongOnCard(session.Number, session.Length));
                continue;
            }

            intake.Take(new SessionIdentity(logger, session.BootCount, session.Number), session.Length);
            IReadOnlyList<ByteRange> gaps = sessions.Gaps(session);
            if (gaps.Count > 0)
            {
                lost += gaps.Sum(gap => gap.Length);
                intake.Notes.Add(Messages.GapsOnCard(session.Number, gaps.Sum(gap => gap.Length), gaps.Count));
            }
        }

        if (sessions.All.LastOrDefault() is { Ended: false } last)
        {
            intake.Notes.Add(Messages.BreaksOff(last.Number));
        }

        intake.Notes.AddRange(sessions.Later.Select(one => Messages.LaterSession(one.Key, one.Value)));
        if (sessions.UnreadablePages > 0)
        {
            intake.Notes.Add(Messages.PagesBetweenSessions(sessions.UnreadablePages));
        }

        string? failure = card.Failures > 0 ? Messages.CardFailed(card.Path, card.Failures, card.Reason, lost) : null;
        return new CardResult(intake.Sessions, intake.Notes, failure);
    }

    /// <summary>A session whose header is lost is the logger's that recorded the one before it, or else after it.</summary>
    private List<(LoggedSession Session, uint Logger)> WithLogger()
    {
        List<(LoggedSession Session, uint? Logger)> known = [.. sessions.All.Select(session => (session, sessions.LoggerOf(session)))];
        uint last = known.Select(one => one.Logger).FirstOrDefault(logger => logger is not null) ?? 0;
        return [.. known.Select(one => (one.Session, last = one.Logger ?? last))];
    }
}

/// <param name="Failure">What the card did not give, as a sentence; null where it gave all.</param>
internal sealed record CardResult(IReadOnlyList<TakenSession> Sessions, IReadOnlyList<string> Notes, string? Failure);
