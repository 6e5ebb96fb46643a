using System.Collections.Generic;
using System.Linq;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>An attribute knows its method and not the class that inherits it; who looks for tests knows both.</summary>
public sealed class StoreFactDiscoverer(IMessageSink sink) : FactDiscoverer(sink)
{
    protected override IXunitTestCase CreateTestCase(ITestFrameworkDiscoveryOptions discoveryOptions, ITestMethod testMethod, IAttributeInfo factAttribute) =>
        LeftOut.Reason(testMethod) is { } reason
            ? LeftOut.Case(DiagnosticMessageSink, discoveryOptions, testMethod, reason)
            : base.CreateTestCase(discoveryOptions, testMethod, factAttribute);
}

public sealed class StoreTheoryDiscoverer(IMessageSink sink) : TheoryDiscoverer(sink)
{
    public override IEnumerable<IXunitTestCase> Discover(ITestFrameworkDiscoveryOptions discoveryOptions, ITestMethod testMethod, IAttributeInfo theoryAttribute) =>
        LeftOut.Reason(testMethod) is { } reason
            ? [LeftOut.Case(DiagnosticMessageSink, discoveryOptions, testMethod, reason)]
            : base.Discover(discoveryOptions, testMethod, theoryAttribute);
}

internal static class LeftOut
{
    public static string? Reason(ITestMethod method) =>
        method.TestClass.Class.GetCustomAttributes(typeof(InPostgresAttribute)).Any() ? PostgresFactAttribute.Reason : null;

    public static IXunitTestCase Case(IMessageSink sink, ITestFrameworkDiscoveryOptions options, ITestMethod method, string reason) =>
        new XunitSkippedDataRowTestCase(sink, options.MethodDisplayOrDefault(), options.MethodDisplayOptionsOrDefault(), method, reason);
}
