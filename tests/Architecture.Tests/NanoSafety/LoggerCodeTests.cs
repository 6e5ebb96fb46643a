using System.Collections.Generic;
using System.Linq;
using LoggerBox.Architecture.Tests.Metadata;
using Xunit;

namespace LoggerBox.Architecture.Tests.NanoSafety;

public class LoggerCodeTests
{
    public static IEnumerable<object[]> RuleNames => NanoRules.All(LoggerAssemblies.Enums).Keys.Select(name => new object[] { name });

    [Theory]
    [MemberData(nameof(RuleNames))]
    public void Code_for_the_logger_keeps_the_rule(string rule)
    {
        string[] broken = LoggerAssemblies.AllTypes.SelectMany(NanoRules.All(LoggerAssemblies.Enums)[rule]).ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    [Fact]
    public void Code_for_the_logger_uses_core_library_types_that_were_seen_to_work()
    {
        string[] broken = LoggerAssemblies.AllTypes.SelectMany(type => NanoRules.OutsideAllowedTypes(type, AllowedTypes.CoreLibrary)).Distinct().ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    [Fact]
    public void The_protocol_needs_the_core_library_and_nothing_else() => Assert.Equal([AllowedTypes.CoreLibrary], LoggerAssemblies.Protocol.References.Keys);

    [Fact]
    public void The_capture_engine_needs_the_core_library_and_the_protocol_and_nothing_else() =>
        Assert.Equal(["LoggerBox.Protocol", AllowedTypes.CoreLibrary], LoggerAssemblies.Capture.References.Keys.Order());

    [Theory]
    [MemberData(nameof(RuleNames))]
    public void Code_of_the_board_itself_keeps_the_rule(string rule)
    {
        string[] broken = LoggerAssemblies.BoardEsp32.Types.SelectMany(NanoRules.All(LoggerAssemblies.Enums)[rule]).ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    [Theory]
    [MemberData(nameof(RuleNames))]
    public void Code_of_the_self_test_keeps_the_rule(string rule)
    {
        string[] broken = LoggerAssemblies.SelfTest.Types.SelectMany(NanoRules.All(LoggerAssemblies.Enums)[rule]).ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    [Fact]
    public void The_self_test_needs_the_core_library_and_what_it_tests_and_nothing_else() =>
        Assert.Equal(["LoggerBox.Capture", "LoggerBox.Protocol", AllowedTypes.CoreLibrary], LoggerAssemblies.SelfTest.References.Keys.Order());

    [Fact]
    public void The_parts_of_a_board_need_the_core_library_and_the_capture_engine_and_nothing_else() =>
        Assert.Equal(["LoggerBox.Capture", "LoggerBox.Protocol", AllowedTypes.CoreLibrary], LoggerAssemblies.BoardParts.References.Keys.Order());

    [Fact]
    public void Only_the_board_itself_sees_device_packages() =>
        Assert.Contains("System.Device.Gpio", LoggerAssemblies.BoardEsp32.References.Keys);

    [Fact]
    public void All_are_compiled_against_the_core_library_whose_types_were_tried()
    {
        foreach (AssemblyScan assembly in new[] { LoggerAssemblies.Protocol, LoggerAssemblies.Capture, LoggerAssemblies.BoardParts, LoggerAssemblies.BoardEsp32, LoggerAssemblies.SelfTest })
        {
            Assert.Equal(AllowedTypes.CoreLibraryVersion, assembly.References[AllowedTypes.CoreLibrary].ToString());
        }
    }
}
