using System.Reflection.Emit;

namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>One instruction of a method body; Operand is the text of the member or type that it names, or empty.</summary>
internal readonly record struct Instruction(OpCode Code, string Operand)
{
    public override string ToString() => Operand.Length == 0 ? Code.Name! : Code.Name + " " + Operand;
}
