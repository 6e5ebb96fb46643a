using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using System.Threading;

namespace LoggerBox.Shop;

/// <summary>What was asked for last, each made once: who asks for the same meanwhile waits for it, who asks for something else does not.</summary>
/// <param name="weight">How much of the room one takes.</param>
/// <param name="room">The newest is kept however much it takes.</param>
internal sealed class Recent<TKey, [DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.PublicParameterlessConstructor)] TValue>(Func<TKey, long> weight, long room)
    where TKey : notnull
{
    private readonly Lock gate = new();
    private readonly LinkedList<(TKey Key, Lazy<TValue> Value)> kept = [];

    /// <summary>It is made, or being made.</summary>
    public bool Holds(TKey key)
    {
        lock (gate)
        {
            return kept.Any(known => known.Key.Equals(key));
        }
    }

    public TValue Find(TKey key, Func<TValue> make)
    {
        Lazy<TValue> found = Place(key, make);
        try
        {
            return found.Value;
        }
        catch
        {
            // Whoever asks again may have better luck.
            lock (gate)
            {
                kept.Remove((key, found));
            }

            throw;
        }
    }

    private Lazy<TValue> Place(TKey key, Func<TValue> make)
    {
        lock (gate)
        {
            (TKey Key, Lazy<TValue> Value) one = kept.FirstOrDefault(known => known.Key.Equals(key));
            if (one.Value is null)
            {
                one = (key, new Lazy<TValue>(make));
            }

            kept.Remove(one);
            kept.AddFirst(one);
            while (kept.Count > 1 && kept.Sum(known => weight(known.Key)) > room)
            {
                kept.RemoveLast();
            }

            return one.Value;
        }
    }
}
