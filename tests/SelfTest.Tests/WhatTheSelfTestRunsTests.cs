using System;
using System.IO;
using System.Linq;
using System.Reflection;
using LoggerBox.Benchmarks.Cost;
using Xunit;

namespace LoggerBox.SelfTest.Tests;

public class WhatTheSelfTestRunsTests
{
    /// <summary>A class that the self-test never runs could crash the interpreter unseen.</summary>
    [Fact]
    public void Every_class_of_protocol_and_capture_runs_in_the_self_test()
    {
        CountedAssemblies assemblies = new(SelfTestProgram.ForTheLogger, "LoggerBox.Protocol", "LoggerBox.Capture");
        MethodInfo main = assemblies.Load("LoggerBox.SelfTest").EntryPoint!;
        assemblies.Clear();
        TextWriter console = Console.Out;
        try
        {
            Console.SetOut(TextWriter.Null);
            main.Invoke(null, null);
        }
        finally
        {
            Console.SetOut(console);
        }

        long[] counts = new long[assemblies.Methods.Count];
        assemblies.Take(counts);
        string[] idle = [.. assemblies.Methods.Zip(counts).GroupBy(pair => ClassOf(pair.First))
            .Where(type => type.Key.StartsWith("LoggerBox.", StringComparison.Ordinal) && type.All(pair => pair.Second == 0)).Select(type => type.Key)];
        Assert.True(counts.Length > 400, "too few methods were counted");
        Assert.Empty(idle);
    }

    // "System.Int32 LoggerBox.Capture.IntegerMath::Abs(System.Int32)"
    private static string ClassOf(string method) => method[(method.IndexOf(' ', StringComparison.Ordinal) + 1)..method.IndexOf("::", StringComparison.Ordinal)];
}
