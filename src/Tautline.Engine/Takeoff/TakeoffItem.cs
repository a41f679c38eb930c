using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Takeoff;

/// <summary>What makes two things the same to buy.</summary>
public readonly record struct ItemKey(string Part, Section? Section = null, long SizeNm = 0, SpecId? Spec = null, string? Finish = null);

/// <summary>A fact's share in a quantity, so many times.</summary>
public readonly record struct Share(FactKey Fact, double Value, int Times, Unit Unit);

/// <summary>A take-off line in the making: which facts it sums, and what decides how much is bought.</summary>
/// <param name="Net">Shares of the net quantity.</param>
/// <param name="Bought">Shares of what the purchase is worked from, where that is not the net quantity.</param>
/// <param name="Masses">Shares of the weight.</param>
public sealed record TakeoffItem(
    ItemKey Key, QuantityUnit NetUnit, PurchaseUnit PurchaseUnit, List<Share> Net, List<Share> Bought, List<Share> Masses)
{
    /// <summary>Shares of what is cut off its pieces, where the lengths they are bought in were chosen.</summary>
    public List<Share> CutOffs { get; } = [];
}
