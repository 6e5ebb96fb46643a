using System.Reflection.Metadata;

namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>Names of types as the sources write them; a nested type has the namespace of the type around it.</summary>
internal static class TypeNames
{
    public static UsedType Of(MetadataReader reader, TypeDefinitionHandle handle)
    {
        TypeDefinition type = reader.GetTypeDefinition(handle);
        string name = reader.GetString(type.Name);
        if (type.GetDeclaringType().IsNil)
        {
            return new UsedType(reader.GetString(reader.GetAssemblyDefinition().Name), reader.GetString(type.Namespace), name);
        }

        UsedType outer = Of(reader, type.GetDeclaringType());
        return outer with { Name = outer.Name + "/" + name };
    }

    public static UsedType Of(MetadataReader reader, TypeReferenceHandle handle)
    {
        TypeReference type = reader.GetTypeReference(handle);
        string name = reader.GetString(type.Name);
        if (type.ResolutionScope.Kind == HandleKind.TypeReference)
        {
            UsedType outer = Of(reader, (TypeReferenceHandle)type.ResolutionScope);
            return outer with { Name = outer.Name + "/" + name };
        }

        string assembly = type.ResolutionScope.Kind == HandleKind.AssemblyReference
            ? reader.GetString(reader.GetAssemblyReference((AssemblyReferenceHandle)type.ResolutionScope).Name)
            : reader.GetString(reader.GetAssemblyDefinition().Name);
        return new UsedType(assembly, reader.GetString(type.Namespace), name);
    }
}
