using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>Ends found by laying out a roll cut by cut and turning the strip over, not by counting odd and even.</summary>
internal static class EndsByPicket
{
    /// <summary>Where both ends are known they differ or a picket is planned; where nobody saw one of the rolls, the splice is left to the site.</summary>
    public static void Check(RollRequest request, RollPlan plan, PullFeed feed, FabricSplice splice)
    {
        var (left, right) = (feed.Pieces[splice.Left], feed.Pieces[splice.Left + 1]);
        var (before, after) = (Known(request, plan, left)?[^1], Known(request, plan, right)?[0]);
        if (before is { } b && after is { } a) Assert.Equal(a == b ? SpliceMatch.OnePicket : SpliceMatch.Matches, splice.Match);
        else if (Roll(request, plan, left.Roll) is null || Roll(request, plan, right.Roll) is null) Assert.Equal(SpliceMatch.ResolveOnSite, splice.Match);
    }

    /// <summary>The fewest splices with equal ends over all choices of ends and turns.</summary>
    public static int Fewest(RollRequest request, RollPlan plan)
    {
        var pieces = plan.Feeds.OrderBy(f => f.HangsAs).SelectMany(f => f.Pieces.Select((p, i) => (Piece: p, Joins: i > 0))).ToList();
        var best = int.MaxValue;
        for (var ends = 0; ends < 1 << plan.Rolls.Count; ends++)
            for (var turns = 0; turns < 1 << pieces.Count; turns++)
                if (Alike(request, plan, pieces, ends, turns) is { } alike) best = Math.Min(best, alike);
        return best;
    }

    private static int? Alike(RollRequest request, RollPlan plan, List<(FabricPiece Piece, bool Joins)> pieces, int ends, int turns)
    {
        var alike = 0;
        bool? end = null;
        for (var i = 0; i < pieces.Count; i++)
        {
            var (piece, joins) = pieces[i];
            var strip = Strip(Roll(request, plan, piece.Roll)!, piece, (ends >> piece.Roll & 1) == 1, (turns >> i & 1) == 1, request.Kinds[0].TurnsOver);
            if (strip is null) return null;
            if (joins && strip[0] == end) alike++;
            end = strip[^1];
        }
        return alike;
    }

    private static bool[]? Known(RollRequest request, RollPlan plan, FabricPiece piece)
    {
        if (!piece.From.IsExact || !piece.To.IsExact || !plan.Rolls[piece.Roll].In.IsExact || Roll(request, plan, piece.Roll) is not { } roll) return null;
        var otherEnd = plan.Feeds.SelectMany(f => f.Pieces).Any(p => p.Roll == piece.Roll && p.Turn == PieceTurn.OtherEndFirst);
        // A piece turned besides hides whether its roll was: then all of its roll's pieces are, or it came as it is.
        if (piece.Turn is PieceTurn.EndForEnd or PieceTurn.TopForBottom && plan.Feeds.SelectMany(f => f.Pieces).Where(p => p.Roll == piece.Roll).All(p => p.Turn is PieceTurn.EndForEnd or PieceTurn.TopForBottom)) return null;
        return Strip(roll, piece, otherEnd, piece.Turn is PieceTurn.EndForEnd or PieceTurn.TopForBottom, true);
    }

    /// <summary>The states of all cuts of a piece from left to right as it hangs; nothing where it cannot be turned so.</summary>
    private static bool[]? Strip(bool[] roll, FabricPiece piece, bool otherEnd, bool turned, bool turnsOver)
    {
        bool[] cuts = otherEnd ? [.. roll.Reverse()] : roll;
        var strip = cuts[piece.From.High..(piece.To.High + 1)];
        if (!turned) return strip;
        if ((strip.Length - 1) % 2 == 1) return [.. strip.Reverse()];
        return turnsOver ? [.. strip.Select(s => !s)] : null;
    }

    /// <summary>Whether each cut of a roll is whole, where an end of it is known.</summary>
    private static bool[]? Roll(RollRequest request, RollPlan plan, int index)
    {
        var roll = plan.Rolls[index];
        var seen = request.Seen.LastOrDefault(s => s.Roll == roll.Id)?.First ?? request.Remnants.FirstOrDefault(r => r.Id == roll.Id.Stock)?.First;
        if (seen is not { } first) return null;
        var cuts = new bool[roll.In.High + 1];
        cuts[0] = first == EndState.Whole;
        for (var i = 1; i < cuts.Length; i++) cuts[i] = !cuts[i - 1];
        return cuts;
    }
}
