using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Architecture.Tests.Metadata;
using Xunit;

namespace LoggerBox.Architecture.Tests.NanoSafety;

/// <summary>A rule that finds nothing proves nothing: each is shown types that break it.</summary>
public class RulesFindWhatTheyForbidTests
{
    private static readonly AssemblyScan OwnAssembly = AssemblyReader.Read(typeof(RulesFindWhatTheyForbidTests).Assembly.Location);

    private static readonly IReadOnlyDictionary<string, Func<TypeScan, IEnumerable<string>>> Rules = NanoRules.All(new HashSet<string> { typeof(Colour).FullName! });

    public static TheoryData<string, Type> Broken => new()
    {
        { "generic type or method", typeof(OfGeneric<>) },
        { "generic type or method", typeof(UsesGenericInstance) },
        { "generic type or method", typeof(UsesNullable) },
        { "generic type or method", typeof(HasGenericMethod) },
        { "generic type or method", typeof(CallsGenericMethod) },
        { "generic type or method", typeof(UsesTuple) },
        { "generic type or method", typeof(UsesGenericDelegate) },
        { "array of more than one rank", typeof(UsesTwoRanks) },
        { "pointer", typeof(UsesPointer) },
        { "volatile or ref readonly", typeof(UsesVolatile) },
        { "volatile or ref readonly", typeof(ReturnsReadOnlyReference) },
        { "checked arithmetic", typeof(UsesCheckedSum) },
        { "checked arithmetic", typeof(UsesCheckedCast) },
        { "stackalloc", typeof(UsesStackAllocation) },
        { "floating point", typeof(UsesDouble) },
        { "floating point", typeof(UsesSingleField) },
        { "name of an enum as text", typeof(WritesEnumName) },
        { "name of an enum as text", typeof(JoinsEnumName) },
        { "default interface method", typeof(IHasDefault) },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_rule_finds_a_type_that_breaks_it(string rule, Type type) => Assert.NotEmpty(Rules[rule](Scan(type)));

    [Fact]
    public void Every_rule_is_shown_a_type_that_breaks_it() => Assert.Equal(Rules.Keys.Order(), Broken.Select(row => (string)row[0]).Distinct().Order());

    [Fact]
    public void A_type_outside_the_allowed_list_is_found() => Assert.NotEmpty(NanoRules.OutsideAllowedTypes(Scan(typeof(UsesTypeThatWasNotTried)), "System.Runtime"));

    [Fact]
    public void Code_that_keeps_every_rule_is_let_pass()
    {
        TypeScan type = Scan(typeof(KeepsEveryRule));
        Assert.Empty(Rules.Values.SelectMany(rule => rule(type)));
        Assert.Empty(NanoRules.OutsideAllowedTypes(type, "System.Runtime"));
    }

    private static TypeScan Scan(Type type) => OwnAssembly.Types.Single(scan => scan.Type.FullName == type.FullName);
}
