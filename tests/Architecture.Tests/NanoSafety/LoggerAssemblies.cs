using System.Collections.Generic;
using System.Linq;
using LoggerBox.Architecture.Tests.Files;
using LoggerBox.Architecture.Tests.Metadata;

namespace LoggerBox.Architecture.Tests.NanoSafety;

/// <summary>The assemblies as they were compiled for the logger.</summary>
internal static class LoggerAssemblies
{
    public static AssemblyScan Protocol { get; } = Read("shared-protocol", "LoggerBox.Protocol");

    public static AssemblyScan Capture { get; } = Read("firmware/capture", "LoggerBox.Capture");

    public static AssemblyScan BoardParts { get; } = Read("firmware/board-parts", "LoggerBox.BoardParts");

    public static AssemblyScan BoardEsp32 { get; } = AssemblyReader.Read(
        Repository.PathOf($"firmware/board-esp32/bin/{Repository.Configuration}/netnano1.0/LoggerBox.BoardEsp32.exe"));

    public static AssemblyScan SelfTest { get; } = AssemblyReader.Read(
        Repository.PathOf($"firmware/self-test/bin/{Repository.Configuration}/netnano1.0/LoggerBox.SelfTest.exe"));

    public static IReadOnlySet<string> Enums { get; } = Protocol.Types.Concat(Capture.Types).Concat(BoardParts.Types).Concat(BoardEsp32.Types).Where(type => type.IsEnum).Select(type => type.Type.FullName).ToHashSet();

    /// <summary>What is to run on any board, and on a PC too.</summary>
    public static IEnumerable<TypeScan> AllTypes => Protocol.Types.Concat(Capture.Types).Concat(BoardParts.Types);

    private static AssemblyScan Read(string folder, string name) =>
        AssemblyReader.Read(Repository.PathOf($"{folder}/bin/{Repository.Configuration}/netnano1.0/{name}.dll"));
}
