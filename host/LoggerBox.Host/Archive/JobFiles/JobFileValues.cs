using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using LoggerBox.Host.Releasing;

namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>From a section's values to what the archive stores; each refuses what no archive could have written.</summary>
internal static class JobFileValues
{
    private const int UidLength = 32;
    private const int LongestCode = 40;

    public static Job Job(JobFileFields fields, (string Name, string Text) sheet, IEnumerable<JobFileSession> sessions, IReadOnlyList<GateTick> gates)
    {
        string uid = fields.Text("uid");
        Expect(uid.Length == UidLength && uid.All(char.IsAsciiHexDigitLower), "its uid is no uid");
        List<JobSession> members = [.. sessions.Select(session => new JobSession(session.Id, session.Role))];
        Expect(members.Select(member => member.Id).Distinct().Count() == members.Count, "a session is there twice");
        JobDetails details = new(
            fields.Text("truck"),
            fields.Text("serial"),
            fields.Number("hours"),
            fields.Text("fuel"),
            fields.Text("complaint"),
            fields.Text("technician"),
            sheet.Name,
            sheet.Text,
            fields.Number("altitude_m"),
            fields.Number("air_c"),
            fields.Text("oil_level"),
            fields.Text("oil_look"),
            fields.Number("oil_c"),
            fields.Text("oil_read"));
        (string cause, string correction) = (fields.Text("cause"), fields.Text("correction"));
        string? tooLong = JobTexts.TooLong(details) ?? JobTexts.TooLong(cause, correction);
        Expect(tooLong is null, tooLong ?? "");
        return new Job(fields.Text("id"), uid, details, fields.Moment("opened"), fields.MomentOrNull("closed"), cause, correction, members, gates);
    }

    public static (string Name, string Text) Sheet(JobFileFields fields, ReadOnlySpan<byte> text)
    {
        string name = fields.Text("name");
        Expect(name.IndexOfAny(JobFileFormat.InNoFileName) < 0, "the data sheet's name is no file name");
        Expect(text.Length <= JobFileFormat.LongestText && !text.Contains((byte)0), "the data sheet is no text");
        try
        {
            return (name, new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(text));
        }
        catch (DecoderFallbackException)
        {
            throw new FormatException("the data sheet is no text in UTF-8");
        }
    }

    public static JobFileSession Session(JobFileFields fields, long offset, int length)
    {
        string id = fields.Text("id");
        Expect(RowId.IsSession(id), "a session has no id");
        SessionIdentity identity = new(
            (uint)fields.Integer("logger", 0, uint.MaxValue),
            (ushort)fields.Integer("boot", 0, ushort.MaxValue),
            (uint)fields.Integer("number", 0, uint.MaxValue));
        Expect(SessionColumns.TryReadOrigin(fields.Text("origin"), out SessionOrigin origin), "a session's origin is none");
        Expect(fields.Text("role") is "" or "before" or "after", "a session's role is none");
        return new JobFileSession(
            id,
            identity,
            origin,
            fields.Text("source"),
            fields.Moment("stored"),
            JobColumns.Role(fields.Text("role")),
            (uint)fields.Integer("crc", 0, uint.MaxValue),
            offset,
            length);
    }

    /// <summary>A gate that this program does not know is kept: a later one wrote it.</summary>
    public static GateTick Gate(JobFileFields fields)
    {
        string code = fields.Text("gate");
        Expect(code.Length is > 0 and <= LongestCode && code.All(letter => char.IsAsciiLetterLower(letter) || letter == '-'), "a gate has no code");
        string by = fields.Text("by");
        string note = fields.Text("note");
        Expect(!string.IsNullOrWhiteSpace(by) && GateRows.IsText(by, GateRows.LongestName), "nobody answers for a gate");
        Expect(GateRows.IsText(note, GateRows.LongestNote), "a gate's note is no note");
        return new GateTick(code, fields.Integer("withdrawn", 0, 1) == 1, by, note, fields.Moment("made"));
    }

    public static ArchivedCalibration Calibration(JobFileFields fields)
    {
        int Whole(string name) => (int)fields.Integer(name, int.MinValue, int.MaxValue);
        DateOnly? Day(string name) => CalibrationRows.Day(fields.Text(name));
        Expect(Whole("span_counts") != 0, "a calibration has no span");
        return new ArchivedCalibration(
            (uint)fields.Integer("logger", 0, uint.MaxValue),
            (int)fields.Integer("channel", 1, 3),
            Whole("zero_counts"),
            Whole("span_counts"),
            Whole("span_pa"),
            Whole("accuracy_pa"),
            fields.Text("transducer"),
            fields.Text("reference"),
            fields.Text("certificate"),
            Day("certified_on"),
            Day("reference_due"),
            Day("due"),
            fields.Text("by"),
            fields.Text("points"),
            fields.Moment("made"));
    }

    public static Correction Correction(JobFileFields fields)
    {
        if (fields.Text("field") == CorrectionRows.StartField)
        {
            new JobFileFields().Add("value", fields.Text("value")).Integer("value", 0, uint.MaxValue);
        }

        return new Correction(
            fields.Text("subject"), fields.Text("field"), fields.Text("value"), fields.Text("reason"), fields.Text("technician"), fields.Moment("made"));
    }

    private static void Expect(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new FormatException(otherwise);
        }
    }
}
