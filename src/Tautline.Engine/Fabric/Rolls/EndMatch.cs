namespace Tautline.Engine.Fabric.Rolls;

/// <summary>What is known of the two ends of a roll, seen from the end that is unrolled first.</summary>
internal readonly record struct RollEnds(EndState? First, EndState? Far, PicketRange In)
{
    /// <summary>With the end that follows from the other and an exact number of pickets.</summary>
    public RollEnds Completed() => !In.IsExact ? this : this with { First = First ?? After(Far, In.Low), Far = Far ?? After(First, In.Low) };

    public RollEnds FromOtherEnd => new(Far, First, In);

    /// <summary>Known to look different unrolled from its other end.</summary>
    public bool IsOdd => First is { } first && Far is { } far && first != far;

    /// <summary>State of a cut after so many pickets.</summary>
    public EndState? At(PicketRange pickets)
    {
        if (pickets == In) return Far;
        return pickets.IsExact ? After(First, pickets.Low) : null;
    }

    /// <summary>The state changes from each picket to the next.</summary>
    private static EndState? After(EndState? state, int pickets) => state is not { } known ? null : pickets % 2 == 0 ? known : Other(known);

    public static EndState Other(EndState state) => state == EndState.Half ? EndState.Whole : EndState.Half;
}

/// <summary>A piece to be matched with its neighbours.</summary>
/// <param name="Known">False where at one end of the range it is not needed: nothing is said of its ends then.</param>
internal readonly record struct MatchPiece(int Pull, int Roll, PicketRange From, PicketRange To, bool Known);

/// <param name="OtherEnd">By roll, whether it is unrolled from its other end.</param>
/// <param name="Turned">By piece, whether it is turned besides.</param>
/// <param name="Splices">By piece, how it meets the piece before it in its pull; nothing for the first of a pull.</param>
internal sealed record Matched(bool[] OtherEnd, bool[] Turned, SpliceMatch?[] Splices);

/// <summary>
/// Half and whole: a splice needs one of each. Two choices at each piece, hung as it comes or turned, and two at each roll, which end is
/// unrolled first: a dynamic program over the pieces in hanging order with these four states finds the fewest splices that need a picket
/// taken off, then the fewest turns. Turning an odd piece end for end and an even one (knuckled both edges, half count) top for bottom both
/// change the state of both its ends; other even pieces cannot be helped.
/// </summary>
internal sealed class EndMatch
{
    private const int Never = int.MaxValue / 2;

    private readonly IReadOnlyList<MatchPiece> pieces;
    private readonly IReadOnlyList<RollEnds> rolls;
    private readonly bool turnsOver;
    private readonly int[,] parents;

    private EndMatch(IReadOnlyList<MatchPiece> pieces, IReadOnlyList<RollEnds> rolls, bool turnsOver)
        => (this.pieces, this.rolls, this.turnsOver, parents) = (pieces, rolls, turnsOver, new int[pieces.Count, 4]);

    /// <param name="pieces">In hanging order, the pieces of a roll one after the other.</param>
    public static Matched Solve(IReadOnlyList<MatchPiece> pieces, IReadOnlyList<RollEnds> rolls, bool turnsOver)
    {
        var match = new EndMatch(pieces, [.. rolls.Select(r => r.Completed())], turnsOver);
        return match.Back(match.Forward());
    }

    /// <summary>State 0 as it comes, 1 turned, 2 and 3 the same from the roll's other end.</summary>
    private int Forward()
    {
        var cost = new long[] { 0, Never, Never, Never };
        for (var i = 0; i < pieces.Count; i++)
        {
            var next = new long[4];
            for (var to = 0; to < 4; to++)
            {
                (next[to], parents[i, to]) = (long.MaxValue / 2, 0);
                for (var from = 0; from < 4; from++)
                    if (cost[from] + Step(i, from, to) is var through && through < next[to]) (next[to], parents[i, to]) = (through, from);
            }
            cost = next;
        }
        return Array.IndexOf(cost, cost.Min());
    }

    private long Step(int i, int from, int to)
    {
        var sameRoll = i > 0 && pieces[i].Roll == pieces[i - 1].Roll;
        if (sameRoll ? from / 2 != to / 2 : to >= 2 && !rolls[pieces[i].Roll].IsOdd) return long.MaxValue / 4;
        if (to % 2 == 1 && !Turns(i, to)) return long.MaxValue / 4;
        // Of two fixes the roll's other end is the easier; a picket weighs more than every turn there could be.
        var turns = (sameRoll ? 0 : to / 2 * 2) + to % 2 * 3;
        return turns + (IsSplice(i) && Alike(i, from, to) == true ? 5L * pieces.Count + 1 : 0);
    }

    private bool IsSplice(int i) => i > 0 && pieces[i].Pull == pieces[i - 1].Pull;

    /// <summary>An odd piece, or an even one that can stand on its head.</summary>
    private bool Turns(int i, int state) => Ends(i, state - 1) is ({ } left, { } right) && (left != right || turnsOver);

    private bool? Alike(int i, int from, int to) => (Ends(i - 1, from).Right, Ends(i, to).Left) is ({ } left, { } right) ? left == right : null;

    /// <summary>States of both ends of a piece as it hangs.</summary>
    private (EndState? Left, EndState? Right) Ends(int i, int state)
    {
        var piece = pieces[i];
        if (!piece.Known) return (null, null);
        var roll = state >= 2 ? rolls[piece.Roll].FromOtherEnd : rolls[piece.Roll];
        var (left, right) = (roll.At(piece.From), roll.At(piece.To));
        return state % 2 == 0 ? (left, right) : (Other(left), Other(right));
    }

    private static EndState? Other(EndState? state) => state is { } known ? RollEnds.Other(known) : null;

    private Matched Back(int state)
    {
        var found = new Matched(new bool[rolls.Count], new bool[pieces.Count], new SpliceMatch?[pieces.Count]);
        for (var i = pieces.Count - 1; i >= 0; i--)
        {
            var from = parents[i, state];
            found.OtherEnd[pieces[i].Roll] = state >= 2;
            found.Turned[i] = state % 2 == 1;
            if (IsSplice(i)) found.Splices[i] = Of(Alike(i, from, state));
            state = from;
        }
        return found;
    }

    private static SpliceMatch Of(bool? alike) => alike switch { null => SpliceMatch.ResolveOnSite, true => SpliceMatch.OnePicket, false => SpliceMatch.Matches };
}
