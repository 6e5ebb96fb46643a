using System.Text.Json.Serialization;
using LoggerBox.Shop.Comparing;
using LoggerBox.Shop.Live;
using LoggerBox.Shop.Sheets;
using LoggerBox.Shop.Traces;

namespace LoggerBox.Shop;

/// <summary>What scripts are told, written by generated code.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(CompareAbout))]
[JsonSerializable(typeof(LiveShown))]
[JsonSerializable(typeof(SheetCheck))]
[JsonSerializable(typeof(TraceAbout))]
internal sealed partial class ShopJson : JsonSerializerContext;
