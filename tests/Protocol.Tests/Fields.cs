using System;
using System.Collections;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Reflection;

namespace LoggerBox.Protocol.Tests;

/// <summary>The public fields of records and messages: filled from a seed, and listed as text in the order of their declaration.</summary>
public static class Fields
{
    public static void Fill(object target, Random random)
    {
        foreach (FieldInfo field in Of(target))
        {
            object? value = field.GetValue(target);
            if (value is Array parts && parts.Length > 0 && parts.GetValue(0) is not (byte or short or int or uint))
            {
                foreach (object part in parts)
                {
                    Fill(part, random);
                }
            }
            else if (!field.IsInitOnly)
            {
                field.SetValue(target, Value(field.FieldType, random));
            }
        }
    }

    public static string List(object target) => string.Join('\n', Lines(target, "")) + "\n";

    private static IEnumerable<FieldInfo> Of(object target) =>
        target.GetType().GetFields(BindingFlags.Public | BindingFlags.Instance).OrderBy(field => field.MetadataToken);

    private static IEnumerable<string> Lines(object target, string prefix)
    {
        foreach (FieldInfo field in Of(target))
        {
            object? value = field.GetValue(target);
            if (value is string or ValueType)
            {
                yield return prefix + field.Name + " = " + Convert.ToString(value, CultureInfo.InvariantCulture);
                continue;
            }

            int index = 0;
            foreach (object part in value as IEnumerable ?? Array.Empty<object>())
            {
                string name = $"{prefix}{field.Name}[{index++}]";
                IEnumerable<string> lines = part is ValueType ? [name + " = " + part] : Lines(part, name + ".");
                foreach (string line in lines)
                {
                    yield return line;
                }
            }
        }
    }

    // Never 0: a field that was not written at all reads as 0.
    private static object Value(Type type, Random random)
    {
        if (type == typeof(string))
        {
            return "Größe " + (char)random.Next('A', 'Z') + random.Next(1, 999);
        }

        if (type == typeof(bool))
        {
            return true;
        }

        if (type.IsEnum)
        {
            Array values = Enum.GetValues(type);
            return values.GetValue(random.Next(1, values.Length))!;
        }

        long any = random.NextInt64(1, long.MaxValue);
        return type == typeof(long) ? any
            : type == typeof(int) ? (int)(any % int.MaxValue) + 1
            : type == typeof(uint) ? (uint)(any % uint.MaxValue) + 1
            : type == typeof(short) ? (short)(any % short.MaxValue + 1)
            : type == typeof(ushort) ? (ushort)(any % ushort.MaxValue + 1)
            : type == typeof(byte) ? (object)(byte)(any % 255 + 1)
            : throw new NotSupportedException(type.Name);
    }
}
