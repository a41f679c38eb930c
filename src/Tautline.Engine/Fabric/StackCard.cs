using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>What slides on a terminal.</summary>
public enum StackKind { TensionBand, BraceBand, RodBand, RailEndBand, WireBand, Hinge, BarbArm, Cap }

/// <summary>One width of fabric that ends at the post, on its bar and bands.</summary>
/// <param name="Name">As the crew knows it: 'toward A12', 'run 2'.</param>
/// <param name="Bands">Where its bands would sit with nothing else on the post.</param>
/// <param name="Rows">Diamonds over its height.</param>
/// <param name="Pitch">Mean height of a diamond.</param>
/// <param name="Limit">Largest space between two bands.</param>
/// <param name="EndMost">Farthest the outer bands may sit from the edges of the fabric, in diamonds.</param>
public sealed record StackEnd(string Name, FasteningSet Bands, double Rows, Length Pitch, Length Limit, double EndMost)
{
    /// <summary>Top of this fabric under the top of the highest at the post.</summary>
    public Length Drop { get; init; }

    /// <param name="bandsAt">As planned for the end.</param>
    public static StackEnd Of(string name, ResolvedSpec spec, FasteningSet bandsAt)
    {
        var pitch = new Length(Fastening.Pitch<Plain>(spec).Value);
        var rules = spec.Rules;
        var endMost = (rules.BandEndDistance.Length + rules.BarShorter.Length / 2) / pitch; // the bar stops half its shortening inside the fabric
        return new StackEnd(name, bandsAt, spec.Diamonds.Diamonds, pitch, rules.BandMax.Length, endMost);
    }
}

/// <summary>Anything else that sits on the post at a height.</summary>
/// <param name="Diamond">From the top of the fabric of its end.</param>
/// <param name="End">Index of the end in whose diamonds it is counted.</param>
public sealed record StackPart(StackKind Kind, string Name, double Diamond, int Count = 1, int End = 0);

/// <summary>What meets at a terminal.</summary>
/// <param name="Ends">The highest fabric first; at least one.</param>
/// <param name="Top">Cap or barb arm.</param>
public sealed record TerminalParts(IReadOnlyList<StackEnd> Ends, IReadOnlyList<StackPart> Parts, StackKind Top, Length BandWidth)
{
    /// <summary>
    /// The usual parts of one run at a terminal (common practice, no source): rail end half a diamond down, brace rail at mid-height, rod band
    /// near the ground, wires half a diamond from the edges.
    /// </summary>
    public static IReadOnlyList<StackPart> Usual(ResolvedSpec spec, string run, int end = 0)
    {
        var rows = spec.Diamonds.Diamonds;
        List<StackPart> parts = [spec.TopRail ? new(StackKind.RailEndBand, $"top rail, {run}", 0.5) : new(StackKind.WireBand, $"top wire, {run}", 0.5)];
        if (spec.Braced || spec.Spec.Middle == "rail") parts.Add(new(StackKind.BraceBand, $"brace rail, {run}", Math.Floor(rows) / 2));
        if (spec.Braced) parts.Add(new(StackKind.RodBand, $"truss rod, {run}", rows - 1.5));
        if (spec.Spec.Bottom == "rail") parts.Add(new(StackKind.RailEndBand, $"bottom rail, {run}", rows - 0.5));
        else if (spec.BottomWire) parts.Add(new(StackKind.WireBand, $"bottom wire, {run}", rows - 0.5));
        return [.. parts.Select(p => p with { End = end })];
    }
}

/// <summary>A step of sliding on: so many of one thing, and where they end up.</summary>
/// <param name="Count">Of all its places together; 1 for a cap or arm.</param>
/// <param name="Diamonds">From the top of its own fabric, in sliding order, so the lowest place first; empty for cap or arm.</param>
public sealed record StackItem(StackKind Kind, string Name, int Count, IReadOnlyList<double> Diamonds, string Note);

/// <summary>A tension band that gave way.</summary>
/// <param name="For">What it would have sat on.</param>
public sealed record StackMove(string End, double From, double To, string For);

/// <summary>The order in which things slide on a post, first the one that lies lowest; cap or arm comes last.</summary>
/// <param name="Problems">Bands that could not give way.</param>
public sealed record StackCard(IReadOnlyList<StackItem> Items, IReadOnlyList<StackMove> Moves, IReadOnlyList<Problem> Problems);
