using System.Collections.Generic;

namespace LoggerBox.Architecture.Tests.NanoSafety;

/// <summary>
/// Types of nanoFramework's mscorlib 1.17.11 that were seen to work on its interpreter. What is not here either crashes it (Action`1, Func), belongs at
/// the edge of the board (threads, timers, clocks), or has not been needed: try it on the interpreter, then add it.
/// </summary>
internal static class AllowedTypes
{
    public const string CoreLibrary = "mscorlib";

    public const string CoreLibraryVersion = "1.17.11.0";

    public static readonly IReadOnlySet<string> Names = new HashSet<string>
    {
        "System.Object", "System.ValueType", "System.Enum", "System.Void", "System.String", "System.Array", "System.Attribute", "System.Type",
        "System.Boolean", "System.Char", "System.Byte", "System.SByte", "System.Int16", "System.UInt16", "System.Int32", "System.UInt32", "System.Int64", "System.UInt64",
        "System.Delegate", "System.MulticastDelegate", "System.AsyncCallback", "System.IAsyncResult", "System.IntPtr", "System.IDisposable", "System.BitConverter",
        "System.Exception", "System.ArgumentException", "System.ArgumentNullException", "System.ArgumentOutOfRangeException", "System.InvalidOperationException",
        "System.FlagsAttribute", "System.AttributeTargets", "System.AttributeUsageAttribute", "System.ParamArrayAttribute", "System.ObsoleteAttribute", "System.RuntimeFieldHandle",
        "System.Reflection.DefaultMemberAttribute", "System.Diagnostics.DebuggableAttribute", "System.Diagnostics.DebuggableAttribute/DebuggingModes",
        "System.Diagnostics.DebuggerBrowsableAttribute", "System.Diagnostics.DebuggerBrowsableState", "System.Diagnostics.ConditionalAttribute",
        "System.Runtime.CompilerServices.RuntimeHelpers", "System.Runtime.CompilerServices.ExtensionAttribute", "System.Runtime.CompilerServices.InternalsVisibleToAttribute",
        "System.Runtime.CompilerServices.IsExternalInit", "System.Runtime.CompilerServices.MethodImplAttribute", "System.Runtime.CompilerServices.MethodImplOptions",
        "System.Threading.Monitor", "System.Diagnostics.CodeAnalysis.NotNullWhenAttribute", "System.Diagnostics.CodeAnalysis.MaybeNullWhenAttribute",
    };
}
