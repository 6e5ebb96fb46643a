using System;
using System.IO;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Host;

namespace LoggerBox.App.Cards;

/// <summary>Finds the log in a card's folder: the file of the fixed name, or the only one that is a log by its content.</summary>
internal static class CardSearch
{
    // One cut can spoil a block of eight pages, and a blank or older page may stand before the log's first: look at a few more.
    private const int PagesToLookAt = 64;

    /// <exception cref="UserErrorException">No such folder, nothing in it that is a log, or more than one.</exception>
    public static CardFile Open(string folder)
    {
        if (File.Exists(folder))
        {
            return Checked(CardFile.Open(folder, folder));
        }

        if (!Directory.Exists(folder))
        {
            throw new UserErrorException(Messages.NoCardFolder(folder));
        }

        string usual = Path.Combine(folder, CardFile.LogName);
        return File.Exists(usual) ? Checked(CardFile.Open(folder, usual)) : CardFile.Open(folder, OnlyLogIn(folder));
    }

    /// <summary>The first page of a log that can be found; -1: none. A header is believed by its CRC, whatever log it is of.</summary>
    public static int FirstPage(CardFile card)
    {
        var header = new PageHeader();
        byte[] page = new byte[PageHeader.Length];
        for (int at = 0; at < PagesToLookAt; at++)
        {
            if (card.Read((long)at * card.PageLength, page, 0, page.Length) == page.Length && header.TryRead(page, 0, at))
            {
                return at;
            }
        }

        return -1;
    }

    private static CardFile Checked(CardFile card)
    {
        if (FirstPage(card) >= 0 || IsBlank(card))
        {
            return card;
        }

        string sentence = card.Failures > 0 ? Messages.CardUnreadable(card.Path, card.Reason) : Messages.NoLog(card.Path);
        card.Dispose();
        throw new UserErrorException(sentence);
    }

    private static string OnlyLogIn(string folder)
    {
        string[] logs;
        try
        {
            logs = [.. Directory.EnumerateFiles(folder).Where(IsLog).Order(StringComparer.Ordinal)];
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException(Messages.CardClosed(folder, error.Message));
        }

        return logs.Length switch
        {
            1 => logs[0],
            0 => throw new UserErrorException(Messages.NoLogIn(folder)),
            _ => throw new UserErrorException(Messages.SeveralLogs(folder, logs.Select(Path.GetFileName))),
        };
    }

    private static bool IsLog(string path)
    {
        try
        {
            if (CardFile.PlainLength(path) < PageHeader.Length)
            {
                return false;
            }

            using CardFile card = CardFile.Open(path, path);
            return FirstPage(card) >= 0;
        }
        catch (Exception error) when (error is UserErrorException or IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    // A card that no session was recorded on yet: erased flash reads as ones, a new file as zeros.
    private static bool IsBlank(CardFile card)
    {
        byte[] bytes = new byte[(int)Math.Min(card.Length, PagesToLookAt * card.PageLength)];
        return card.Read(0, bytes, 0, bytes.Length) == bytes.Length && (bytes.All(one => one == 0) || bytes.All(one => one == 0xFF));
    }
}
