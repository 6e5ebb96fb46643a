using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>Reads an assembly file without loading it, so that one for another platform can be looked at too.</summary>
internal sealed class AssemblyReader(PEReader file)
{
    private readonly MetadataReader _metadata = file.GetMetadataReader();

    public static AssemblyScan Read(string path)
    {
        using var file = new PEReader(File.OpenRead(path));
        var reader = new AssemblyReader(file);
        return new AssemblyScan(reader.ReadTypes(), reader.ReadReferences());
    }

    private Dictionary<string, Version> ReadReferences() => _metadata.AssemblyReferences
        .Select(_metadata.GetAssemblyReference)
        .ToDictionary(reference => _metadata.GetString(reference.Name), reference => reference.Version);

    private List<TypeScan> ReadTypes() => _metadata.TypeDefinitions.Select(ReadType).ToList();

    private TypeScan ReadType(TypeDefinitionHandle handle)
    {
        TypeDefinition definition = _metadata.GetTypeDefinition(handle);
        var uses = new HashSet<UsedType>();
        var text = new SignatureText(_metadata, uses);
        string parent = definition.BaseType.IsNil ? string.Empty : text.Type(definition.BaseType);
        var scan = new TypeScan(TypeNames.Of(_metadata, handle))
        {
            Attributes = definition.Attributes,
            IsEnum = parent == "System.Enum",
            GenericParameters = definition.GetGenericParameters().Count,
        };
        scan.Signatures.Add(parent);
        scan.Signatures.AddRange(definition.GetInterfaceImplementations().Select(item => text.Type(_metadata.GetInterfaceImplementation(item).Interface)));
        scan.Signatures.AddRange(definition.GetFields().Select(item => _metadata.GetFieldDefinition(item).DecodeSignature(text, null)));
        scan.Methods.AddRange(definition.GetMethods().Select(item => ReadMethod(item, scan, text)));
        scan.Uses.UnionWith(uses);
        return scan;
    }

    private MethodScan ReadMethod(MethodDefinitionHandle handle, TypeScan type, SignatureText text)
    {
        MethodDefinition definition = _metadata.GetMethodDefinition(handle);
        var method = new MethodScan(_metadata.GetString(definition.Name), SignatureText.Method(definition.DecodeSignature(text, null)), definition.Attributes)
        {
            GenericParameters = definition.GetGenericParameters().Count,
        };
        if (definition.RelativeVirtualAddress == 0)
        {
            return method;
        }

        MethodBodyBlock body = file.GetMethodBody(definition.RelativeVirtualAddress);
        if (!body.LocalSignature.IsNil)
        {
            method.Locals = SignatureText.Locals(_metadata.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(text, null));
        }

        method.Instructions = IntermediateCode.Read(body.GetILBytes()!)
            .Select(item => new Instruction(item.Code, item.Token.IsNil ? string.Empty : Operand(item.Token, type, text)))
            .ToList();
        return method;
    }

    private string Operand(EntityHandle token, TypeScan type, SignatureText text)
    {
        switch (token.Kind)
        {
            case HandleKind.MemberReference:
                MemberReference member = _metadata.GetMemberReference((MemberReferenceHandle)token);
                type.Signatures.Add(member.GetKind() == MemberReferenceKind.Field
                    ? member.DecodeFieldSignature(text, null)
                    : SignatureText.Method(member.DecodeMethodSignature(text, null)));
                return Owner(member.Parent, text) + "::" + _metadata.GetString(member.Name);
            case HandleKind.MethodDefinition:
                MethodDefinition method = _metadata.GetMethodDefinition((MethodDefinitionHandle)token);
                return text.Type(method.GetDeclaringType()) + "::" + _metadata.GetString(method.Name);
            case HandleKind.FieldDefinition:
                FieldDefinition field = _metadata.GetFieldDefinition((FieldDefinitionHandle)token);
                return text.Type(field.GetDeclaringType()) + "::" + _metadata.GetString(field.Name);
            case HandleKind.MethodSpecification:
                MethodSpecification generic = _metadata.GetMethodSpecification((MethodSpecificationHandle)token);
                return Operand(generic.Method, type, text) + "{" + string.Join(", ", generic.DecodeSignature(text, null)) + "}";
            case HandleKind.StandaloneSignature:
                return "signature";
            default:
                return text.Type(token);
        }
    }

    private string Owner(EntityHandle parent, SignatureText text) => parent.Kind == HandleKind.MethodDefinition
        ? text.Type(_metadata.GetMethodDefinition((MethodDefinitionHandle)parent).GetDeclaringType())
        : text.Type(parent);
}
