using System;
using System.Threading.Tasks;
using LoggerBox.ShopBench.Pictures;
using LoggerBox.ShopBench.Speed;

namespace LoggerBox.ShopBench;

/// <summary>The shop page in a browser: how fast it is, and what it looks like.</summary>
internal static class Program
{
    private static async Task<int> Main(string[] words)
    {
        switch (words)
        {
            case ["speed"]:
                await SpeedBench.Run();
                return 0;
            case ["pictures", string folder]:
                await PictureBook.Take(folder);
                return 0;
            default:
                await Console.Error.WriteLineAsync("Say speed, or pictures FOLDER.");
                return 2;
        }
    }
}
