using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;
using Mono.Cecil.Rocks;

namespace LoggerBox.Benchmarks.Cost;

/// <summary>Puts before each basic block what adds its length to the counter of its method.</summary>
internal sealed class BlockCounter
{
    public const string HolderName = "Counted";
    public const string FieldName = "Instructions";

    private readonly FieldDefinition counters;

    public BlockCounter(ModuleDefinition module)
    {
        TypeDefinition holder = new("", HolderName, TypeAttributes.Public | TypeAttributes.Class | TypeAttributes.Abstract | TypeAttributes.Sealed, module.TypeSystem.Object);
        counters = new FieldDefinition(FieldName, FieldAttributes.Public | FieldAttributes.Static, new ArrayType(module.TypeSystem.Int64));
        holder.Fields.Add(counters);
        module.Types.Add(holder);
    }

    public void Count(MethodBody body, int method)
    {
        body.SimplifyMacros();
        ILProcessor processor = body.GetILProcessor();
        HashSet<Instruction> heads = Heads(body);
        Instruction[] originals = [.. body.Instructions];
        for (int i = 0; i < originals.Length;)
        {
            int end = i + 1;
            while (end < originals.Length && !heads.Contains(originals[end]))
            {
                end++;
            }

            Insert(processor, originals[i], method, end - i);
            i = end;
        }

        body.OptimizeMacros();
    }

    private static HashSet<Instruction> Heads(MethodBody body)
    {
        HashSet<Instruction> heads = [.. body.ExceptionHandlers.SelectMany(handler => new[] { handler.TryStart, handler.HandlerStart, handler.FilterStart }).Where(start => start is not null)];
        foreach (Instruction instruction in body.Instructions)
        {
            if (instruction.Operand is Instruction target)
            {
                heads.Add(target);
            }

            if (instruction.Operand is Instruction[] targets)
            {
                heads.UnionWith(targets);
            }

            bool ends = instruction.OpCode.FlowControl is FlowControl.Branch or FlowControl.Cond_Branch or FlowControl.Return or FlowControl.Throw;
            if (ends && instruction.Next is not null)
            {
                heads.Add(instruction.Next);
            }
        }

        return heads;
    }

    private void Insert(ILProcessor processor, Instruction head, int method, int length)
    {
        // The head's place becomes the counter's, so that every branch to it passes the counter.
        Instruction moved = processor.Create(OpCodes.Nop);
        (moved.OpCode, moved.Operand) = (head.OpCode, head.Operand);
        (head.OpCode, head.Operand) = (OpCodes.Ldsfld, counters);
        Instruction[] rest =
        [
            processor.Create(OpCodes.Ldc_I4, method), processor.Create(OpCodes.Ldelema, counters.Module.TypeSystem.Int64), processor.Create(OpCodes.Dup),
            processor.Create(OpCodes.Ldind_I8), processor.Create(OpCodes.Ldc_I8, (long)length), processor.Create(OpCodes.Add), processor.Create(OpCodes.Stind_I8), moved,
        ];
        Instruction at = head;
        foreach (Instruction next in rest)
        {
            processor.InsertAfter(at, next);
            at = next;
        }
    }
}
