using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LoggerBox.Shop;

/// <summary>Addresses that are only read: HEAD is answered as GET is, without the content.</summary>
internal static class Reading
{
    public static void MapReading(this IEndpointRouteBuilder routes, string pattern, RequestDelegate answer) => routes.MapMethods(pattern, [HttpMethods.Get, HttpMethods.Head], answer);
}
