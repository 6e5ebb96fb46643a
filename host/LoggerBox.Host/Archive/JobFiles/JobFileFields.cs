using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Text;

namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>
/// The named values of a section, all of them text. What is not there is empty or null; names that are not known are left alone.
/// </summary>
internal sealed class JobFileFields
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private readonly Dictionary<string, string> values = [];

    public JobFileFields Add(string name, string value)
    {
        if (value.Length > 0)
        {
            values[name] = value;
        }

        return this;
    }

    public JobFileFields Add(string name, long value) => Add(name, value.ToString(CultureInfo.InvariantCulture));

    public JobFileFields Add(string name, double? value) => Add(name, value?.ToString("R", CultureInfo.InvariantCulture) ?? "");

    /// <summary>The moment in two values: NAME_utc, seconds since 1970, and NAME_offset_min, the shop's minutes from UTC.</summary>
    public JobFileFields Add(string name, DateTimeOffset? time) => time is DateTimeOffset known
        ? Add(name + "_utc", known.ToUnixTimeSeconds()).Add(name + "_offset_min", (long)known.Offset.TotalMinutes)
        : this;

    public string Text(string name) => values.GetValueOrDefault(name, "");

    /// <exception cref="FormatException">It is not there, or no whole number from <paramref name="least"/> to <paramref name="most"/>.</exception>
    public long Integer(string name, long least, long most) =>
        long.TryParse(Text(name), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value) && value >= least && value <= most
            ? value
            : throw new FormatException($"\"{name}\" is no whole number from {least} to {most}");

    public double? Number(string name)
    {
        if (Text(name).Length == 0)
        {
            return null;
        }

        return double.TryParse(Text(name), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? value
            : throw new FormatException($"\"{name}\" is no number");
    }

    public DateTimeOffset Moment(string name)
    {
        long offset = Integer(name + "_offset_min", -14 * 60, 14 * 60);

        // From 1970 to the year 9998: any offset leaves it a date.
        return DateTimeOffset.FromUnixTimeSeconds(Integer(name + "_utc", 0, 253_370_764_800)).ToOffset(TimeSpan.FromMinutes(offset));
    }

    public DateTimeOffset? MomentOrNull(string name) => Text(name + "_utc").Length == 0 ? null : Moment(name);

    public byte[] ToBytes()
    {
        using MemoryStream bytes = new();
        Span<byte> length = stackalloc byte[4];
        foreach ((string name, string value) in values)
        {
            byte[] text = Utf8.GetBytes(value);
            BinaryPrimitives.WriteUInt32LittleEndian(length, (uint)text.Length);
            bytes.WriteByte((byte)name.Length);
            bytes.Write(Encoding.ASCII.GetBytes(name));
            bytes.Write(length);
            bytes.Write(text);
        }

        bytes.WriteByte(0);
        return bytes.ToArray();
    }

    /// <summary>Reads the values and leaves in <paramref name="rest"/> what follows them.</summary>
    /// <exception cref="FormatException">The values are cut, or one is no text.</exception>
    public static JobFileFields Read(ReadOnlySpan<byte> bytes, out ReadOnlySpan<byte> rest)
    {
        JobFileFields fields = new();
        rest = bytes;
        while (true)
        {
            int nameLength = Take(ref rest, 1)[0];
            if (nameLength == 0)
            {
                return fields;
            }

            string name = TextOf(Take(ref rest, nameLength));
            uint length = BinaryPrimitives.ReadUInt32LittleEndian(Take(ref rest, 4));
            if (length > JobFileFormat.LongestText)
            {
                throw new FormatException($"\"{Excerpt.Of(name)}\" claims {length} bytes of text");
            }

            if (!fields.values.TryAdd(name, TextOf(Take(ref rest, (int)length))))
            {
                throw new FormatException($"\"{Excerpt.Of(name)}\" is there twice");
            }
        }
    }

    private static ReadOnlySpan<byte> Take(ref ReadOnlySpan<byte> rest, int count)
    {
        if (count > rest.Length)
        {
            throw new FormatException("a value is cut");
        }

        ReadOnlySpan<byte> taken = rest[..count];
        rest = rest[count..];
        return taken;
    }

    private static string TextOf(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Contains((byte)0))
        {
            throw new FormatException("a text holds a NUL character");
        }

        try
        {
            return Utf8.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            throw new FormatException("a text is no UTF-8");
        }
    }
}
