using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Takeoff;

/// <summary>Quantities of a take-off line from the facts it sums.</summary>
public static class TakeoffFormulas
{
    private const double CubicYard = 0.764554857984; // 27 cubic feet

    public static N Net<N>(TakeoffItem item) where N : struct, INumber<N> => Sum<N>(item.Net);

    /// <summary>Weight of the net quantity: of posts piece by piece, of rail by its whole length.</summary>
    public static N Mass<N>(TakeoffItem item, FactKey net, double netValue, ResolvedSpec? spec) where N : struct, INumber<N>
        => item.Masses.Count > 0 ? Sum<N>(item.Masses)
            : item.Key.Part == "fabric" ? MeshFormulas.Weight<N>(spec!) * N.Known(net, netValue, Unit.Length)
            : PostFormulas.Mass(item.Key.Section!, N.Known(net, netValue, Unit.Length));

    private static readonly HashSet<string> small =
        ["post-tie", "rail-tie", "ring", "lacing-ring", "carriage-bolt", "screen-tie", "concertina-tie"];

    /// <summary>True for small parts that are bought over the count.</summary>
    public static bool HasSpare(TakeoffItem item) => small.Contains(item.Key.Part);

    public static N Spare<N>(FactKey net, double netValue, Rules rules) where N : struct, INumber<N>
        => N.Cover(N.Known(net, netValue, Unit.Count) * N.Rule(rules.SpareSmall), N.Constant(1));

    /// <summary>True where the catalogue gives a weight.</summary>
    public static bool HasMass(TakeoffItem item) => item.Masses.Count > 0 || item.Key.Part is "rail" or "fabric";

    /// <summary>Whole units to buy.</summary>
    /// <param name="roll">Length of a roll or coil of the item as its spec states it, metres; 0 where the rules do.</param>
    public static N Purchase<N>(TakeoffItem item, FactKey net, double netValue, double roll, Rules rules) where N : struct, INumber<N>
        => item.PurchaseUnit switch
        {
            PurchaseUnit.Stick => Sticks<N>(item, rules),
            PurchaseUnit.AsMeasured => N.Given("nothing to buy", 0, Unit.Count),
            PurchaseUnit.Coil when roll > 0 => N.Cover(N.Known(net, netValue, Unit.Length), N.Given("a coil covers", roll, Unit.Length)),
            PurchaseUnit.Coil => N.Cover(N.Known(net, netValue, Unit.Length), N.Rule(rules.WireCoil)),
            PurchaseUnit.Roll => N.Cover(Sum<N>(item.Bought), N.Given("roll", roll, Unit.Length)),
            PurchaseUnit.Bag => Sum<N>(item.Bought),
            PurchaseUnit.Sack => N.Cover(N.Known(net, netValue, Unit.Volume), N.Rule(rules.GroutYield)),
            PurchaseUnit.Yard => N.Cover(N.Known(net, netValue, Unit.Volume) * N.Rule(rules.SpoilSwell), N.Given("a cubic yard", CubicYard, Unit.Volume)),
            PurchaseUnit.Spool => N.Cover(N.Known(net, netValue, Unit.Length) + Sum<N>(item.Bought) * N.Rule(rules.BarbTail), N.Rule(rules.BarbSpool)),
            _ => N.Known(net, netValue, Unit.Count),
        };

    /// <summary>Bags for the whole volume at once; the plan buys whole bags for each hole.</summary>
    public static N BagsByTotal<N>(FactKey net, double volume, Rules rules) where N : struct, INumber<N>
        => N.Cover(N.Known(net, volume, Unit.Volume) * (N.Constant(1) + N.Rule(rules.OverBreak)), N.Rule(rules.BagYield));

    public static N Left<N>(TakeoffItem item, FactKey purchase, double rolls, double roll) where N : struct, INumber<N>
        => N.Known(purchase, rolls, Unit.Count) * N.Given("roll", roll, Unit.Length) - Sum<N>(item.Bought);

    /// <summary>What is cut off the posts of a line.</summary>
    public static N CutOffs<N>(TakeoffItem item) where N : struct, INumber<N> => Sum<N>(item.CutOffs);

    /// <summary>Full sticks stay full; what is left of every run, and the brace rails, are packed first-fit decreasing.</summary>
    private static N Sticks<N>(TakeoffItem item, Rules rules) where N : struct, INumber<N>
    {
        var stick = N.Rule(rules.RailStick);
        var (full, ends) = (new N[item.Net.Count], new N[item.Net.Count]);
        for (var i = 0; i < full.Length; i++)
        {
            var rail = One<N>(item.Net[i]);
            full[i] = N.Fit(rail, stick);
            ends[i] = rail - full[i] * stick;
        }
        return N.Sum(full) + N.Pack(stick, ends);
    }

    private static N Sum<N>(List<Share> shares) where N : struct, INumber<N>
    {
        var terms = new N[shares.Count];
        for (var i = 0; i < terms.Length; i++) terms[i] = One<N>(shares[i]);
        return N.Sum(terms);
    }

    private static N One<N>(Share share) where N : struct, INumber<N>
    {
        var value = N.Known(share.Fact, share.Value, share.Unit);
        return share.Times == 1 ? value : N.Constant(share.Times) * value;
    }
}
