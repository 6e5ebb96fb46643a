using System;
using System.Globalization;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;

namespace LoggerBox.Shop.Pages;

/// <summary>A session's row in one line.</summary>
internal static class SessionWords
{
    public static string Of(ArchivedSession row) =>
        $"{Started(row)}, {Length(row)}, {row.Holds} holds, from {PlainText.Of(row.Source)}{State(row)}";

    public static string Started(ArchivedSession row) => row.Start is DateTimeOffset start ? JobWords.Moment(start) : "undated";

    public static string Length(ArchivedSession row) => row.Duration.TotalMinutes >= 1
        ? string.Create(CultureInfo.InvariantCulture, $"{row.Duration.TotalMinutes:0} min")
        : string.Create(CultureInfo.InvariantCulture, $"{row.Duration.TotalSeconds:0} s");

    public static string State(ArchivedSession row) => row switch
    {
        { Complete: false } => $", arriving: {row.Received} of {row.Length} bytes are here",
        { Damage.Any: true } => ", damaged in places",
        { Ended: false } => ", cut: not closed in order",
        _ => "",
    };
}
