namespace Tautline.Engine.Fabric;

/// <summary>
/// Draws a bias cut. Picket j lies between j and j + 1 half diamonds; its legs run from side to side, one for each half row, and it
/// interlocks with its neighbours at every bend, so neighbouring columns of interlocks lie half a diamond apart.
/// </summary>
internal static class CutDrawing
{
    /// <summary>Whole pickets drawn before the inmost that ends the fabric.</summary>
    private const int Before = 3;

    /// <summary>Letters for the wires on a line of 79.</summary>
    private const int Widest = 79 - LabelWidth - 1;

    private const int LabelWidth = 7;

    /// <summary>The picket that ends the fabric at each half row, 0 at the edge cut back.</summary>
    public static int EndPicket(BiasCut cut, int halfRow)
    {
        var crossed = cut.Crossings.Count(h => 2 * h <= halfRow);
        return cut.StepsOut ? crossed : Math.Max(cut.Columns, 1) - 1 - crossed;
    }

    public static IReadOnlyList<CutStroke> Path(BiasCut cut)
    {
        List<CutStroke> strokes = [];
        for (var r = 0; r < 2 * cut.Rows; r++)
        {
            var leg = Leg(cut, CutLine.Path, EndPicket(cut, r), r);
            if (Steps(cut, r)) strokes.Add(new(CutLine.StepOver, strokes[^1].ToX, leg.FromY, leg.FromX, leg.FromY));
            strokes.Add(leg);
        }
        return strokes;
    }

    public static IReadOnlyList<CutStroke> Mesh(BiasCut cut)
    {
        List<CutStroke> strokes = [];
        for (var r = 0; r < 2 * cut.Rows; r++)
            for (var j = -Before; j < Math.Max(cut.Columns, 1); j++)
                if (j != EndPicket(cut, r)) strokes.Add(Leg(cut, j < EndPicket(cut, r) ? CutLine.Kept : CutLine.TakenOff, j, r));
        return strokes;
    }

    /// <summary>One letter for each picket and half row, the end of the fabric as '|', what comes off as dots; wider cuts at a smaller scale.</summary>
    public static IReadOnlyList<string> Letters(BiasCut cut)
    {
        var scale = (Math.Max(cut.Columns, 1) - 1) / (Widest - Before - 1) + 1;
        List<string> lines = ["top".PadLeft(LabelWidth - 1) + " roll this side, terminal that side ->"];
        for (var r = 0; r < 2 * cut.Rows; r++) lines.Add(Label(cut, r) + Line(cut, r, scale));
        lines.Add("bottom");
        if (scale > 1) lines.Add($"one letter across is {scale} pickets");
        return lines;
    }

    private static string Label(BiasCut cut, int halfRow)
    {
        var steps = Steps(cut, halfRow);
        return (steps || halfRow % 8 == 0 ? DiamondText.Number(halfRow / 2.0) : "").PadLeft(LabelWidth - 1) + (steps ? ">" : " ");
    }

    private static bool Steps(BiasCut cut, int halfRow) => cut.Crossings.Any(h => (int)(2 * h) == halfRow);

    private static string Line(BiasCut cut, int halfRow, int scale)
    {
        var end = EndPicket(cut, halfRow) / scale;
        var last = (Math.Max(cut.Columns, 1) - 1) / scale;
        var kept = string.Concat(Enumerable.Range(-Before, Before + end + 1).Select(j => RunsOut(cut, j, halfRow) ? '\\' : '/'));
        return kept + "|" + new string('.', last - end);
    }

    private static CutStroke Leg(BiasCut cut, CutLine line, int picket, int halfRow)
    {
        var (inner, outer) = (picket / 2.0, (picket + 1) / 2.0);
        var (from, to) = RunsOut(cut, picket, halfRow) ? (inner, outer) : (outer, inner);
        return new(line, from, halfRow / 2.0, to, (halfRow + 1) / 2.0);
    }

    /// <summary>Whether a leg runs outwards going down. At the first crossing the two pickets meet where the cut says they do.</summary>
    private static bool RunsOut(BiasCut cut, int picket, int halfRow)
    {
        var firstMeets = cut.StepsOut ? 1 : cut.Columns - 1;
        var half = cut.First == FirstInterlock.Half ? 1 : 0;
        return (picket + halfRow + firstMeets + half) % 2 == 0;
    }
}
