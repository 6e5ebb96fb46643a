namespace LoggerBox.Architecture.Tests.Metadata;

/// <summary>A type that some code names, with the assembly that defines it.</summary>
internal readonly record struct UsedType(string Assembly, string Namespace, string Name)
{
    public string FullName => Namespace.Length == 0 ? Name : Namespace + "." + Name;

    public override string ToString() => $"{FullName} ({Assembly})";
}
