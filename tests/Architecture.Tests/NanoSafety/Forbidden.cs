using System;

namespace LoggerBox.Architecture.Tests.NanoSafety;

#pragma warning disable CA1051, CA1822, CA1052, CA1812, CA1823, CS0169, CS0649, CA2211, CA1069, IDE0051, IDE0044
// CA1051 and the others: these types exist only to break one rule each, so that a test can see the rule find them. They are never run.

internal enum Colour
{
    Red,
}

internal sealed class OfGeneric<T>
{
    public T? Value;
}

internal sealed class UsesGenericInstance
{
    public System.Collections.Generic.List<int>? Numbers;
}

internal sealed class UsesNullable
{
    public int? Maybe;
}

internal sealed class HasGenericMethod
{
    public static T Same<T>(T value) => value;
}

internal sealed class CallsGenericMethod
{
    public static int Same(int value) => HasGenericMethod.Same(value);
}

internal sealed class UsesTuple
{
    public static int Sum((int A, int B) pair) => pair.A + pair.B;
}

internal sealed class UsesGenericDelegate
{
    public Action<int>? Called;
}

internal sealed class UsesTwoRanks
{
    public int[,] Grid = new int[2, 2];
}

internal sealed unsafe class UsesPointer
{
    public static byte First(byte[] bytes)
    {
        fixed (byte* first = bytes)
        {
            return *first;
        }
    }
}

internal sealed class UsesVolatile
{
    public volatile int Flag;
}

internal sealed class ReturnsReadOnlyReference
{
    private readonly int _value = 1;

    public ref readonly int Value => ref _value;
}

internal sealed class UsesCheckedSum
{
    public static int Sum(int a, int b) => checked(a + b);
}

internal sealed class UsesCheckedCast
{
    public static byte Narrow(int a) => checked((byte)a);
}

internal sealed unsafe class UsesStackAllocation
{
    public static int First(int count)
    {
        int* numbers = stackalloc int[count];
        return numbers[0];
    }
}

internal sealed class UsesDouble
{
    public static int Half(int value) => (int)(value * 0.5);
}

internal sealed class UsesSingleField
{
    public float Value;
}

internal sealed class WritesEnumName
{
    public static string Name(Colour colour) => colour.ToString();
}

internal sealed class JoinsEnumName
{
    public static string Name(Colour colour) => string.Concat("colour ", colour);
}

internal interface IHasDefault
{
    int Value => 1;
}

internal sealed class UsesTypeThatWasNotTried
{
    public static int Processors() => Environment.ProcessorCount;
}

internal sealed class KeepsEveryRule
{
    private readonly int[] _ring = new int[8];
    private int _next;

    public bool TryAdd(int value, out long sum)
    {
        sum = 0;
        _ring[_next & 7] = value;
        _next++;
        foreach (int item in _ring)
        {
            sum += (uint)item >> 1;
        }

        return value > 0 && sum / value < 5;
    }
}
