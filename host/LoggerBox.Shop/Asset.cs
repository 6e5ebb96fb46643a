using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Threading.Tasks;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>The scripts, style sheets and drawings that are part of the program: nothing is read from disk, nothing loaded from elsewhere.</summary>
internal static class Asset
{
    private const string Folder = "assets/";

    private static readonly Dictionary<string, string> Types = new()
    {
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
        [".txt"] = "text/plain; charset=utf-8",
    };

    public static void Map(IEndpointRouteBuilder routes)
    {
        Assembly program = typeof(Asset).Assembly;
        foreach (string name in program.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)))
        {
            byte[] bytes = Read(program, name);
            string type = Types[Path.GetExtension(name)];
            routes.MapReading("/" + name.Replace('\\', '/'), context => Send(context, bytes, type));
        }
    }

    private static byte[] Read(Assembly program, string name)
    {
        using Stream stream = program.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static Task Send(HttpContext context, byte[] bytes, string type)
    {
        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        return HttpMethods.IsHead(context.Request.Method) ? Task.CompletedTask : context.Response.Body.WriteAsync(bytes).AsTask();
    }
}
