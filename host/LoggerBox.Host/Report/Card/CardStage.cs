using System.Collections.Generic;

namespace LoggerBox.Host.Report.Card;

/// <summary>What is done without changing how the truck stands.</summary>
public sealed record CardStage(string Name, string SetUp, IReadOnlyList<CardStep> Steps);

/// <summary>One line of the card.</summary>
/// <param name="Number">Counts the steps that are measured; null for what has to be done in between.</param>
/// <param name="Pedal">What the foot does.</param>
/// <param name="Target">Engine speed from the sheet, or what else is to be reached.</param>
/// <param name="HowLong">Until which signal, or how long.</param>
public sealed record CardStep(int? Number, string Name, string Pedal, string Target, string HowLong);
