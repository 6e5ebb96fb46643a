using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.Loader;
using Mono.Cecil;

namespace LoggerBox.Benchmarks.Cost;

/// <summary>
/// The assemblies as they were compiled for the logger, with a counter at the head of each basic block, loaded on this computer: how many
/// instructions an interpreter carries out. Calls into the core library count as one. Their core library is this computer's here.
/// </summary>
internal sealed class CountedAssemblies
{
    private readonly Func<string, string> find;
    private readonly AssemblyLoadContext context = new(nameof(CountedAssemblies));
    private readonly List<string> names = [];
    private readonly List<(int First, long[] Counters)> parts = [];

    /// <param name="find">Path of an assembly by its name.</param>
    /// <param name="counted">Assemblies that are counted, those that others need first.</param>
    public CountedAssemblies(Func<string, string> find, params string[] counted)
    {
        this.find = find;
        foreach (string name in counted)
        {
            LoadCounted(name);
        }
    }

    /// <summary>Every method that is counted, by its full name, in the order of <see cref="Take"/>.</summary>
    public IReadOnlyList<string> Methods => names;

    /// <summary>Loads one that is not counted, and gives it.</summary>
    public Assembly Load(string name)
    {
        using AssemblyDefinition assembly = Read(name);
        return Load(assembly);
    }

    /// <summary>All instructions since the counters were last cleared.</summary>
    public long Sum()
    {
        long sum = 0;
        foreach ((int _, long[] counters) in parts)
        {
            foreach (long counter in counters)
            {
                sum += counter;
            }
        }

        return sum;
    }

    public void Clear()
    {
        foreach ((int _, long[] counters) in parts)
        {
            Array.Clear(counters);
        }
    }

    /// <summary>Adds what was counted in each method.</summary>
    public void Take(long[] into)
    {
        foreach ((int first, long[] counters) in parts)
        {
            for (int i = 0; i < counters.Length; i++)
            {
                into[first + i] += counters[i];
            }
        }
    }

    private void LoadCounted(string name)
    {
        using AssemblyDefinition assembly = Read(name);
        BlockCounter counter = new(assembly.MainModule);
        MethodDefinition[] methods = [.. assembly.MainModule.GetTypes().SelectMany(type => type.Methods).Where(method => method.HasBody)];
        for (int i = 0; i < methods.Length; i++)
        {
            counter.Count(methods[i].Body, i);
        }

        int first = names.Count;
        names.AddRange(methods.Select(method => method.FullName));
        Assembly loaded = Load(assembly);
        long[] counters = new long[methods.Length];
        loaded.GetType(BlockCounter.HolderName)!.GetField(BlockCounter.FieldName)!.SetValue(null, counters);
        parts.Add((first, counters));
    }

    private AssemblyDefinition Read(string name)
    {
        AssemblyDefinition assembly = AssemblyDefinition.ReadAssembly(find(name));
        AssemblyNameReference core = assembly.MainModule.AssemblyReferences.Single(reference => reference.Name == "mscorlib");
        AssemblyName own = Assembly.Load("mscorlib").GetName();
        (core.Version, core.PublicKeyToken) = (own.Version, own.GetPublicKeyToken());
        return assembly;
    }

    private Assembly Load(AssemblyDefinition assembly)
    {
        using MemoryStream bytes = new();
        assembly.Write(bytes);
        bytes.Position = 0;
        return context.LoadFromStream(bytes);
    }
}
