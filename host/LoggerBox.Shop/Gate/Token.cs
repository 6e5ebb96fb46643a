using System;
using System.Security.Cryptography;
using System.Text;

namespace LoggerBox.Shop.Gate;

/// <summary>A random word that only who started the program knows: other users and other programs' pages on this computer don't.</summary>
internal sealed class Token
{
    public const string Parameter = "token";

    private const int Bytes = 32;

    private readonly byte[] expected;

    private Token(string text)
    {
        Text = text;
        expected = Encoding.ASCII.GetBytes(text);
    }

    public string Text { get; }

    public static Token Random() => new(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes)));

    /// <summary>In the same time whatever was offered, so that nobody can find it letter by letter.</summary>
    public bool IsThis(string? offered) => offered is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(offered), expected);
}
