namespace Tautline.Engine.Fabric.Rolls;

/// <summary>Equal pieces of stock of one kind, in pickets at one end of the advance's range.</summary>
/// <param name="LengthNm">As it comes.</param>
/// <param name="Class">Number of its splice class.</param>
/// <param name="Limit">How many there are; <see cref="int.MaxValue"/> for as many as are wanted.</param>
/// <param name="Bought">False for what lies in the yard.</param>
/// <param name="Missing">Stands for rolls nobody has.</param>
public sealed record HangStock(int Pickets, long LengthNm, int Class, int Limit, bool Bought, bool Missing = false);

/// <summary>Pulls of one kind in the order they are hung and the stock that may feed them.</summary>
/// <param name="Needs">Pickets of each pull.</param>
/// <param name="Gaps">Distance from the end of the pull before to the start of each; 0 for the first.</param>
/// <param name="LeastUseful">Shorter pieces left are not woven in again.</param>
public sealed record HangCase(IReadOnlyList<int> Needs, IReadOnlyList<long> Gaps, IReadOnlyList<HangStock> Stock, int LeastUseful);

/// <summary>A roll to open next. What is open is set aside before it where it is the first for its pull.</summary>
/// <param name="Stock">Index in the case's stock.</param>
/// <param name="FreshAt">The pull it starts with whatever is open set aside; -1 where it follows the roll before.</param>
public readonly record struct PlannedRoll(int Stock, int FreshAt);

/// <param name="Proven">Whether nothing was passed over in the search.</param>
public sealed record Hanging(IReadOnlyList<PlannedRoll> Rolls, HangCost Cost, bool Proven);
