using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Reflection.Emit;
using LoggerBox.Architecture.Tests.Metadata;

namespace LoggerBox.Architecture.Tests.NanoSafety;

/// <summary>
/// What compiles for nanoFramework and then crashes its interpreter, hangs it or computes something else than a PC does. Each rule returns the places
/// where a type breaks it. Floating point works there, but differs from .NET in division, casts and comparison: our rule is integers only.
/// </summary>
internal static class NanoRules
{
    /// <summary>Every rule by its name. The enums come in as a list, because an instruction does not tell that the type it names is one.</summary>
    public static IReadOnlyDictionary<string, Func<TypeScan, IEnumerable<string>>> All(IReadOnlySet<string> enums) => new Dictionary<string, Func<TypeScan, IEnumerable<string>>>
    {
        ["generic type or method"] = Generics,
        ["array of more than one rank"] = type => InText(type, text => text.Contains("[,", StringComparison.Ordinal)),
        ["pointer"] = type => InText(type, text => text.Contains('*', StringComparison.Ordinal)),
        ["volatile or ref readonly"] = type => InText(type, text => text.Contains(" modreq ", StringComparison.Ordinal) && !text.Contains("IsExternalInit", StringComparison.Ordinal)),
        ["checked arithmetic"] = type => InCode(type, instruction => instruction.Code.Name!.Contains(".ovf", StringComparison.Ordinal)),
        ["stackalloc"] = type => InCode(type, instruction => instruction.Code == OpCodes.Localloc),
        ["floating point"] = FloatingPoint,
        ["name of an enum as text"] = type => EnumText(type, enums),
        ["default interface method"] = DefaultInterfaceMethods,
    };

    /// <summary>Uses of core library types outside the allowed list.</summary>
    public static IEnumerable<string> OutsideAllowedTypes(TypeScan type, string coreLibrary) => type.Uses
        .Where(used => used.Assembly == coreLibrary && !AllowedTypes.Names.Contains(used.FullName))
        .Select(used => $"{type.Type.FullName} uses {used.FullName}");

    private static IEnumerable<string> Generics(TypeScan type) => InText(type, text => text.Contains('{', StringComparison.Ordinal))
        .Concat(type.GenericParameters > 0 ? [type.Type.FullName] : [])
        .Concat(type.Methods.Where(method => method.GenericParameters > 0).Select(method => Place(type, method)));

    private static IEnumerable<string> FloatingPoint(TypeScan type) =>
        InText(type, text => text.Contains("System.Single", StringComparison.Ordinal) || text.Contains("System.Double", StringComparison.Ordinal))
        .Concat(InCode(type, instruction => instruction.Code.Name!.Contains(".r4", StringComparison.Ordinal)
            || instruction.Code.Name.Contains(".r8", StringComparison.Ordinal)
            || instruction.Code == OpCodes.Conv_R_Un));

    /// <summary>ToString gives the number there and the name here; a string that is put together boxes the enum first.</summary>
    private static IEnumerable<string> EnumText(TypeScan type, IReadOnlySet<string> enums) => InCode(type, instruction =>
        (instruction.Code == OpCodes.Box || instruction.Code == OpCodes.Constrained) && enums.Contains(instruction.Operand));

    private static IEnumerable<string> DefaultInterfaceMethods(TypeScan type) => type.Attributes.HasFlag(TypeAttributes.Interface)
        ? type.Methods.Where(method => !method.Attributes.HasFlag(MethodAttributes.Abstract) && !method.Attributes.HasFlag(MethodAttributes.Static)).Select(method => Place(type, method))
        : [];

    private static IEnumerable<string> InText(TypeScan type, Func<string, bool> breaks) => type.Signatures.Where(breaks).Select(text => $"{type.Type.FullName}: {text}")
        .Concat(type.Methods.Where(method => breaks(method.Signature) || breaks(method.Locals)).Select(method => Place(type, method)))
        .Concat(InCode(type, instruction => breaks(instruction.Operand)));

    private static IEnumerable<string> InCode(TypeScan type, Func<Instruction, bool> breaks) =>
        from method in type.Methods
        from instruction in method.Instructions
        where breaks(instruction)
        select $"{Place(type, method)}: {instruction}";

    private static string Place(TypeScan type, MethodScan method) => type.Type.FullName + "." + method.Name;
}
