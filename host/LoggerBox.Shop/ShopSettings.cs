using System;
using LoggerBox.Host.Units;

namespace LoggerBox.Shop;

/// <summary>What the shop page is started with.</summary>
/// <param name="SheetFolder">Where the shop keeps its data sheets (.toml).</param>
/// <param name="HttpPort">Of 127.0.0.1; 0: any free one.</param>
/// <param name="LoggerPort">The logger's line; null: none is watched.</param>
/// <param name="Unit">Of pressures; null: the sheet's; where there is none, that of the newest job's.</param>
public sealed record ShopSettings(string Archive, string SheetFolder, int HttpPort, string? LoggerPort, PressureUnit? Unit, TimeProvider Clock);
