namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Bays that share one level. What they cost is a convex broken line over the level, so the lowest best level is the corner left of which
/// it falls and right of which it does not. A bay more moves that corner only a little: the group keeps its place among the corners, and slope and cost there.
/// </summary>
internal sealed class LevelGroup
{
    private const double Metre = 1e9;

    // Prices count in billionths of the larger one, of which they have at least one.
    private const double Price = 1e9;

    private readonly FitInput input;
    private readonly long datum;
    private readonly LevelSlope cut;
    private readonly LevelSlope fill;
    private readonly List<long> levels = [];
    private readonly List<LevelSlope> turns = [];
    private int at;
    private long length;
    private LevelSlope cost;
    private LevelSlope slope;

    public LevelGroup(FitInput input)
    {
        (this.input, datum) = (input, Whole(input.Ground.Min(g => g.Height)));
        var most = Math.Max(input.Limits.CutCost, input.Limits.FillCost);
        cut = Of(input.Limits.CutCost / most, Remedies.TrimOrBury | Remedies.Grading);
        fill = Of(input.Limits.FillCost / most, Remedies.ClosurePiece | Remedies.Grading);
    }

    /// <summary>Lowest of the best levels, nanometres.</summary>
    public long Level => levels[at];

    public SteppedCost Cost => new(cost.Pins, cost.Forbidden, cost.Grading, 0, (Int128)length * (Level - datum));

    public static double Metres(long nanometres) => nanometres / Metre;

    public void Clear()
    {
        levels.Clear();
        turns.Clear();
        (at, length, cost, slope) = (0, 0, default, default);
    }

    public void Add(int bay, ReadOnlySpan<(double Share, double Height)> upper, ReadOnlySpan<(double Share, double Height)> lower)
    {
        var (highest, lowest) = (double.NegativeInfinity, double.PositiveInfinity);
        foreach (var (_, height) in upper) highest = Math.Max(highest, height);
        foreach (var (_, height) in lower) lowest = Math.Min(lowest, height);
        var own = Whole(input.Posts[bay + 1].Station - input.Posts[bay].Station);
        length += own;
        Falling(Whole(highest + input.Limits.LeastGap + input.Limits.FabricHeight), cut * own);
        Rising(Whole(lowest + input.Limits.MostGap + input.Limits.FabricHeight), fill * own);
        foreach (var post in (ReadOnlySpan<int>)[bay, bay + 1])
        {
            if (input.Posts[post].Pinned is not { } pin) continue;
            Falling(Whole(pin), new LevelSlope(1, 0, 0));
            Rising(Whole(pin), new LevelSlope(1, 0, 0));
        }
        Settle();
    }

    private LevelSlope Of(double price, Remedies helps)
        => (input.Allowed & helps) == 0 ? new LevelSlope(0, 1, 0) : new LevelSlope(0, 0, Math.Max(1, (long)Math.Round(price * Price)));

    private static long Whole(double metres) => (long)Math.Round(metres * Metre);

    /// <summary>Adds a cost for every level below a corner.</summary>
    private void Falling(long corner, LevelSlope each)
    {
        Insert(corner, each);
        if (Level >= corner) return;
        cost += each * (corner - Level);
        slope -= each;
    }

    /// <summary>Adds a cost for every level above a corner.</summary>
    private void Rising(long corner, LevelSlope each)
    {
        Insert(corner, each);
        if (Level < corner) return;
        cost += each * (Level - corner);
        slope += each;
    }

    private void Insert(long corner, LevelSlope turn)
    {
        var place = levels.BinarySearch(corner);
        if (place >= 0)
        {
            turns[place] += turn;
            return;
        }
        if (levels.Count > 0 && ~place <= at) at++;
        levels.Insert(~place, corner);
        turns.Insert(~place, turn);
    }

    /// <summary>Goes to the corner where the cost stops falling; the slope is that to its right.</summary>
    private void Settle()
    {
        while (slope.Falls)
        {
            cost += slope * (levels[at + 1] - levels[at]);
            slope += turns[++at];
        }
        for (var left = slope - turns[at]; !left.Falls; left = slope - turns[at])
        {
            cost -= left * (levels[at] - levels[at - 1]);
            (slope, at) = (left, at - 1);
        }
    }
}
