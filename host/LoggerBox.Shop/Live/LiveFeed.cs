using System;

namespace LoggerBox.Shop.Live;

internal sealed class LiveFeed(ShopSettings settings) : IDisposable
{
    public string? Port => settings.LoggerPort;

    public void Dispose()
    {
    }
}
