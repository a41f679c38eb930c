using System.Text.Json.Serialization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Takeoff;

/// <summary>What a net quantity counts.</summary>
public enum QuantityUnit { Each, Length, Volume, Area }

/// <summary>What is bought.</summary>
public enum PurchaseUnit { Each, Stick, Coil, Roll, Bag, Spool, Sack, Yard, AsMeasured }

/// <summary>One thing the job needs.</summary>
/// <param name="Part">Id in the catalogue.</param>
/// <param name="Section">The pipe it is or fits, where it has one.</param>
/// <param name="Size">The length it is ordered in, or a leaf's width.</param>
/// <param name="Spec">The spec it belongs to, where two could differ.</param>
/// <param name="Net">What stands in the fence: a count, metres or cubic metres by <paramref name="NetUnit"/>.</param>
/// <param name="Purchase">Whole units to buy.</param>
/// <param name="Mass">Of the net quantity as cut, where the catalogue has a weight.</param>
/// <param name="BagsByTotal">For concrete, the bags the whole volume would take.</param>
/// <param name="Left">For fabric, what the rolls leave over.</param>
/// <param name="Finish">Colour or coating that every part of its fence carries; nothing for zinc.</param>
/// <param name="Spare">Bought over the purchase, for small parts that get lost.</param>
/// <param name="Verify">True where the part or its rule rests on memory or common practice.</param>
public sealed record TakeoffLine(
    int Number, string Part, string Name, string? Section, Length? Size, SpecId? Spec, double Net, QuantityUnit NetUnit, int Purchase,
    PurchaseUnit PurchaseUnit, Mass? Mass, int? BagsByTotal, Length? Left, string? Finish, int? Spare, bool Verify)
{
    /// <summary>For posts in few chosen lengths, what is cut off all of them together.</summary>
    public Length? CutOffs { get; init; }
}
