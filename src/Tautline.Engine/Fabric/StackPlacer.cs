using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

/// <summary>
/// Moves tension bands off what else sits on the post: each by nothing, half or one diamond, within the limit, so that the fewest are
/// left in the way, then the least is moved in all. Exact: a dynamic program over the bands from the top down.
/// </summary>
internal sealed class StackPlacer(StackEnd end, int stacked, IReadOnlyList<(double Diamond, StackPart Part)> parts, Length bandWidth)
{
    private const int LeftInTheWay = 1000; // outweighs every sum of moves

    /// <summary>Stacks need not be centred on their diamond: a quarter inch between two of them is given (our own figure).</summary>
    private static readonly Length slack = Length.FromInches(0.25);

    // Half diamonds; down before up, for a band lowered by half is still counted from the top.
    private static readonly int[] moves = [0, 1, -1, 2, -2];

    private readonly double[] at = [.. end.Bands.Diamonds];

    private sealed record State(int Cost, double Diamond, State? Above);

    public IReadOnlyList<double> Place()
    {
        if (at.Length == 0) return at;
        var states = Candidates(0).Where(c => Within(c.Diamond, at[0])).Select(c => new State(Cost(c), c.Diamond, null)).ToList();
        for (var i = 1; i < at.Length; i++) states = Next(i, states);
        var last = states.Where(s => Within(end.Rows - s.Diamond, end.Rows - at[^1]));
        return Walk(last.MinBy(s => s.Cost)!);
    }

    /// <summary>The first thing a band at a diamond would sit on.</summary>
    public StackPart? InTheWay(double diamond)
    {
        foreach (var (place, part) in parts)
            if (Length.Abs((place - diamond) * end.Pitch) + slack < (stacked + At(place)) / 2.0 * bandWidth) return part;
        return null;
    }

    /// <summary>How many sit at a place together.</summary>
    private int At(double place) => parts.Where(p => Math.Abs(p.Diamond - place) < 0.25).Sum(p => p.Part.Count);

    private List<State> Next(int i, List<State> above)
    {
        var most = Length.Max(end.Limit, (at[i] - at[i - 1]) * end.Pitch); // a set that breaks the limit by itself is not made worse
        List<State> states = [];
        foreach (var candidate in Candidates(i))
        {
            var best = above.Where(s => candidate.Diamond > s.Diamond && ((candidate.Diamond - s.Diamond) * end.Pitch).Nanometres <= most.Nanometres).MinBy(s => s.Cost);
            if (best is not null) states.Add(new State(best.Cost + Cost(candidate), candidate.Diamond, best));
        }
        return states;
    }

    private IEnumerable<(int Move, double Diamond)> Candidates(int i)
        => moves.Select(m => (m, at[i] + m / 2.0)).Where(c => c.m == 0 || (c.Item2 >= 0.5 && c.Item2 <= end.Rows - 0.5));

    private int Cost((int Move, double Diamond) candidate)
        => Math.Abs(candidate.Move) + (InTheWay(candidate.Diamond) is null ? 0 : LeftInTheWay);

    /// <summary>An outer band stays within its distance from the edge, or no farther than it was.</summary>
    private bool Within(double fromEdge, double before) => fromEdge <= Math.Max(end.EndMost, before) + 1e-9;

    private static List<double> Walk(State? state)
    {
        List<double> found = [];
        for (; state is not null; state = state.Above) found.Insert(0, state.Diamond);
        return found;
    }
}
