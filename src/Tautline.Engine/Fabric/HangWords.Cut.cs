namespace Tautline.Engine.Fabric;

/// <summary>The hang as a crew says it, all its English in one class: cut, fastenings, mesh, stack, seat.</summary>
public static partial class HangWords
{
    /// <summary>A bias cut: steps in order, a sentence each.</summary>
    public static IReadOnlyList<string> Cut(BiasCut cut) => cut.Dressed ? Dressed(cut) : cut.Cuttable ? [.. Steps(cut)] : TooSteep(cut);

    private static IReadOnlyList<string> TooSteep(BiasCut cut) =>
    [
        $"This end cannot be cut: {cut.Columns} pickets over {cut.Rows} diamonds step over more than once in half a diamond.",
        "Step the fence there.",
    ];

    private static IReadOnlyList<string> Dressed(BiasCut cut) =>
    [
        cut.Columns == 0 ? "Cut this end straight: top and bottom meet the bar." : "Cut this end straight: top and bottom differ by about one picket.",
        .. cut.Columns == 0 ? Array.Empty<string>() : [$"Dress it out with a short puller at the {(cut.LongEdge == LongEdge.Top ? "bottom" : "top")}, the short edge."],
    ];

    private static IEnumerable<string> Steps(BiasCut cut)
    {
        var way = cut.StepsOut ? "toward the terminal" : "toward the roll";
        yield return cut.StepsOut
            ? $"Left square the end would pass the terminal at the top and miss it at the bottom: the cut runs over {cut.Columns} pickets and takes the top back."
            : $"Left square the end would miss the terminal at the top and pass it at the bottom: the cut runs over {cut.Columns} pickets and takes the bottom back.";
        yield return cut.StepsOut
            ? $"At the top, begin on picket {cut.Columns} counted in from the end."
            : "At the top, begin on the end picket.";
        foreach (var (from, to) in cut.Crossings.Prepend(0).Zip(cut.Crossings)) yield return CountDown(from, to, way);
        yield return $"Count {DiamondText.Number(cut.Rows - cut.Crossings[^1])} down and run out at the bottom.";
        yield return cut.First == FirstInterlock.Unknown
            ? "Step over at the interlock nearest to the count: those of the next picket lie half a diamond higher or lower."
            : "Each count ends on an interlock; those of the next picket lie half a diamond higher or lower.";
        yield return "Cut mid-leg, leave the interlocked bend whole, turn the stub in, touch up the coating.";
    }

    private static string CountDown(double from, double to, string way)
        => from == 0 ? $"Count {DiamondText.Number(to)} down, step over one picket {way}."
            : $"Count {DiamondText.Number(to - from)} more, to {DiamondText.Number(to)}, step over one picket {way}.";
}
