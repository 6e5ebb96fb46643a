using System;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.Loader;
using Mono.Cecil;
using Mono.Cecil.Cil;
using Mono.Cecil.Rocks;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>
/// The protocol's assembly with a counter before every instruction, loaded beside the real one: how many instructions an interpreter
/// would carry out. Calls into the core library count as one.
/// </summary>
public sealed class CountedInstructions
{
    private readonly FieldInfo counter;

    public CountedInstructions()
    {
        Assembly = new AssemblyLoadContext(nameof(CountedInstructions), isCollectible: true).LoadFromStream(Counted(typeof(Protocol.Records.SampleBlock).Assembly.Location));
        counter = Assembly.GetType("Counted")!.GetField("Instructions")!;
    }

    public Assembly Assembly { get; }

    public long Of(Action action)
    {
        counter.SetValue(null, 0L);
        action();
        return (long)counter.GetValue(null)!;
    }

    private static MemoryStream Counted(string path)
    {
        using AssemblyDefinition assembly = AssemblyDefinition.ReadAssembly(path);
        ModuleDefinition module = assembly.MainModule;
        TypeDefinition holder = new("", "Counted", Mono.Cecil.TypeAttributes.Public | Mono.Cecil.TypeAttributes.Class, module.TypeSystem.Object);
        FieldDefinition field = new("Instructions", Mono.Cecil.FieldAttributes.Public | Mono.Cecil.FieldAttributes.Static, module.TypeSystem.Int64);
        holder.Fields.Add(field);
        foreach (MethodDefinition method in module.Types.SelectMany(type => type.Methods).Where(method => method.HasBody))
        {
            Count(method.Body, field);
        }

        module.Types.Add(holder);
        MemoryStream bytes = new();
        assembly.Write(bytes);
        bytes.Position = 0;
        return bytes;
    }

    private static void Count(Mono.Cecil.Cil.MethodBody body, FieldDefinition field)
    {
        body.SimplifyMacros();
        ILProcessor processor = body.GetILProcessor();
        Instruction[] originals = [.. body.Instructions];
        foreach (Instruction original in originals)
        {
            // The original's place becomes the counter's, so that every branch to it passes the counter.
            Instruction moved = processor.Create(OpCodes.Nop);
            (moved.OpCode, moved.Operand) = (original.OpCode, original.Operand);
            (original.OpCode, original.Operand) = (OpCodes.Ldsfld, field);
            Instruction one = processor.Create(OpCodes.Ldc_I8, 1L);
            Instruction add = processor.Create(OpCodes.Add);
            Instruction store = processor.Create(OpCodes.Stsfld, field);
            processor.InsertAfter(original, one);
            processor.InsertAfter(one, add);
            processor.InsertAfter(add, store);
            processor.InsertAfter(store, moved);
        }

        body.OptimizeMacros();
    }
}
