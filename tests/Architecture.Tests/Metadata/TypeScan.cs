using System;
using System.Collections.Generic;
using System.Reflection;

namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>What one type of an assembly declares and uses.</summary>
internal sealed class TypeScan(UsedType type)
{
    public UsedType Type { get; } = type;

    public TypeAttributes Attributes { get; init; }

    public bool IsEnum { get; init; }

    public int GenericParameters { get; init; }

    public HashSet<UsedType> Uses { get; } = [];

    /// <summary>Signatures of fields, of members that are called, and of types that are created or cast to.</summary>
    public List<string> Signatures { get; } = [];

    public List<MethodScan> Methods { get; } = [];
}

/// <summary>What one method declares and does.</summary>
internal sealed class MethodScan(string name, string signature, MethodAttributes attributes)
{
    public string Name { get; } = name;

    public string Signature { get; } = signature;

    public MethodAttributes Attributes { get; } = attributes;

    public int GenericParameters { get; init; }

    public string Locals { get; set; } = string.Empty;

    public IReadOnlyList<Instruction> Instructions { get; set; } = Array.Empty<Instruction>();
}
