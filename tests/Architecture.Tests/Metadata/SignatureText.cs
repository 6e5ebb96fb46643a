using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Reflection.Metadata;

namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>
/// Writes a signature as text and notes each type that it names. Generic instances stand in braces, because compiler-made type names contain angle brackets.
/// </summary>
internal sealed class SignatureText(MetadataReader metadata, ISet<UsedType> uses) : ISignatureTypeProvider<string, object?>
{
    public string GetPrimitiveType(PrimitiveTypeCode typeCode) => "System." + typeCode;

    public string GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) => Use(TypeNames.Of(reader, handle));

    public string GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => Use(TypeNames.Of(reader, handle));

    public string GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) =>
        reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);

    public string GetSZArrayType(string elementType) => elementType + "[]";

    public string GetArrayType(string elementType, ArrayShape shape) => elementType + "[" + new string(',', Math.Max(1, shape.Rank - 1)) + "]";

    public string GetByReferenceType(string elementType) => elementType + "&";

    public string GetPointerType(string elementType) => elementType + "*";

    public string GetPinnedType(string elementType) => elementType + " pinned";

    public string GetGenericInstantiation(string genericType, ImmutableArray<string> typeArguments) => genericType + "{" + string.Join(", ", typeArguments) + "}";

    public string GetGenericMethodParameter(object? genericContext, int index) => "{!!" + index + "}";

    public string GetGenericTypeParameter(object? genericContext, int index) => "{!" + index + "}";

    public string GetFunctionPointerType(MethodSignature<string> signature) => "function " + Method(signature) + "*";

    public string GetModifiedType(string modifier, string unmodifiedType, bool isRequired) => unmodifiedType + (isRequired ? " modreq " : " modopt ") + modifier;

    public string Type(EntityHandle handle) => handle.Kind switch
    {
        HandleKind.TypeDefinition => GetTypeFromDefinition(metadata, (TypeDefinitionHandle)handle, 0),
        HandleKind.TypeReference => GetTypeFromReference(metadata, (TypeReferenceHandle)handle, 0),
        HandleKind.TypeSpecification => GetTypeFromSpecification(metadata, null, (TypeSpecificationHandle)handle, 0),
        _ => throw new ArgumentException($"{handle.Kind} is no type"),
    };

    public static string Method(MethodSignature<string> signature) =>
        $"{signature.ReturnType} ({string.Join(", ", signature.ParameterTypes)})" + (signature.GenericParameterCount > 0 ? "{" + signature.GenericParameterCount + "}" : "");

    public static string Locals(ImmutableArray<string> types) => string.Join(", ", types.Select(type => type));

    private string Use(UsedType type)
    {
        uses.Add(type);
        return type.FullName;
    }
}
