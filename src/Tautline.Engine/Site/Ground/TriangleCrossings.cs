namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Walks along a path from triangle to neighbouring triangle. It starts in the triangle at the beginning of each piece and at every edge of the rim
/// that the piece touches, so it finds its way in from outside and across voids; from a corner or an edge on the path it goes on into all triangles
/// there. The work is in proportion to the triangles met.
/// </summary>
internal sealed class TriangleCrossings(TriangleSurface surface)
{
    private readonly HashSet<int> met = [];
    private readonly Stack<int> open = new();
    private readonly List<int> rim = [];
    private readonly List<GroundSpan> spans = [];

    /// <summary>The ground along a piece, in order of where it begins.</summary>
    public IReadOnlyList<GroundSpan> Along(PathPiece piece)
    {
        met.Clear();
        spans.Clear();
        Meet(surface.FaceAt(piece.From.East, piece.From.North));
        surface.RimAlong(piece, rim);
        foreach (var edge in rim)
            if (Touches(piece.Side(surface.From(edge)), piece.Side(surface.To(edge)))) Meet(edge / 3);
        while (open.TryPop(out var face)) Visit(face, piece);
        spans.Sort((a, b) => a.From != b.From ? a.From.CompareTo(b.From) : a.To.CompareTo(b.To));
        return spans;
    }

    private void Meet(int face)
    {
        if (face >= 0 && met.Add(face)) open.Push(face);
    }

    private void Visit(int face, PathPiece piece)
    {
        var first = 3 * face;
        var (a, b, c) = (piece.Side(surface.From(first)), piece.Side(surface.From(first + 1)), piece.Side(surface.From(first + 2)));
        var cuts = new Ends();
        Cut(piece, first, a, b, ref cuts);
        Cut(piece, first + 1, b, c, ref cuts);
        Cut(piece, first + 2, c, a, ref cuts);
        if (cuts.Count == 0 || cuts.Low.Part > 1 || cuts.High.Part < 0) return;
        if (cuts.High.Part > cuts.Low.Part) Keep(piece.Span(cuts.Low, cuts.High));
        if (Touches(a, b)) Meet(surface.Neighbour(first));
        if (Touches(b, c)) Meet(surface.Neighbour(first + 1));
        if (Touches(c, a)) Meet(surface.Neighbour(first + 2));
    }

    private void Keep(GroundSpan span)
    {
        if (span.To > span.From) spans.Add(span);
    }

    /// <summary>Where the line meets an edge: at its beginning or between its ends.</summary>
    private void Cut(PathPiece piece, int edge, double from, double to, ref Ends cuts)
    {
        if (from == 0) cuts.Note(piece.At(surface.From(edge)));
        else if (PlanTest.Opposite(from, to)) cuts.Note(piece.Across(surface.From(edge), surface.To(edge), from, to));
    }

    private static bool Touches(double side, double other) => !(side > 0 && other > 0 || side < 0 && other < 0);

    /// <summary>The first and the last of the places where a line meets a triangle.</summary>
    private struct Ends
    {
        public PieceCut Low;
        public PieceCut High;
        public int Count;

        public void Note(PieceCut cut)
        {
            if (Count == 0 || cut.Part < Low.Part) Low = cut;
            if (Count == 0 || cut.Part > High.Part) High = cut;
            Count++;
        }
    }
}
