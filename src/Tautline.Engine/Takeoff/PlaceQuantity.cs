namespace Tautline.Engine.Takeoff;

/// <summary>How much of one take-off line stands in one place.</summary>
/// <param name="Item">Number of the take-off line.</param>
/// <param name="Net">Its share of the net quantity: a count, metres, square or cubic metres by the unit of the take-off line.</param>
public sealed record PlaceQuantity(FencePlace Place, int Item, double Net);
