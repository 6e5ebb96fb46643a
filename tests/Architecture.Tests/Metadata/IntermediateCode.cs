using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>Walks the instructions of a method body (ECMA-335 partition III).</summary>
internal static class IntermediateCode
{
    private const byte TwoByteCode = 0xFE;

    private static readonly Dictionary<ushort, OpCode> Codes = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(code => unchecked((ushort)code.Value));

    /// <summary>Each instruction with the token that it carries, or the nil handle.</summary>
    public static IEnumerable<(OpCode Code, EntityHandle Token)> Read(byte[] body)
    {
        int position = 0;
        while (position < body.Length)
        {
            ushort value = body[position++];
            if (value == TwoByteCode)
            {
                value = (ushort)((value << 8) | body[position++]);
            }

            OpCode code = Codes[value];
            EntityHandle token = default;
            if (code.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType or OperandType.InlineSig)
            {
                token = MetadataTokens.EntityHandle(BitConverter.ToInt32(body, position));
            }

            position += OperandSize(code, body, position);
            yield return (code, token);
        }
    }

    private static int OperandSize(OpCode code, byte[] body, int position) => code.OperandType switch
    {
        OperandType.InlineNone => 0,
        OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
        OperandType.InlineVar => 2,
        OperandType.InlineI8 or OperandType.InlineR => 8,
        OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(body, position)),
        _ => 4,
    };
}
