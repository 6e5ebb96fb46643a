using System;
using System.Collections.Generic;
using System.IO;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace LoggerBox.Host;

/// <summary>JSON for other programs, the same everywhere: indented, a missing value is null, never 0.</summary>
public static class JsonText
{
    // Sentences hold quotes and degree signs; the output is a file or a pipe, never a web page's script.
    private static readonly JsonWriterOptions Options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void Write(TextWriter output, Action<Utf8JsonWriter> content)
    {
        ArgumentNullException.ThrowIfNull(output);
        using var bytes = new MemoryStream();
        Write(bytes, content);
        output.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
    }

    /// <summary>One object on one line, for a reader that takes them as they come.</summary>
    public static void WriteLine(TextWriter output, Action<Utf8JsonWriter> content)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(content);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Options with { Indented = false }))
        {
            content(json);
        }

        output.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
    }

    public static void Write(Stream output, Action<Utf8JsonWriter> content)
    {
        ArgumentNullException.ThrowIfNull(content);
        using var json = new Utf8JsonWriter(output, Options);
        content(json);
    }

    /// <summary>Six decimals: a microsecond, a millionth of a unit. Null where there is no number.</summary>
    public static void WriteReading(this Utf8JsonWriter json, string name, double? value)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, Math.Round(number, 6));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    public static void WriteStrings(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(texts);
        json.WriteStartArray(name);
        foreach (string text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
