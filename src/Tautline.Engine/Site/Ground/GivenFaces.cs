namespace Tautline.Engine.Site.Ground;

/// <summary>Puts given faces in order: turning left, each with its neighbours, without those that cannot be used.</summary>
internal static class GivenFaces
{
    /// <summary>The corners of the usable faces, turning left, and the numbers these faces were given by.</summary>
    public static (int[] Corners, int[] Numbers) Usable(GroundPoint[] points, IReadOnlyList<int> faces, GroundFindings findings)
    {
        var corners = new List<int>(faces.Count);
        var numbers = new List<int>(faces.Count / 3);
        for (var i = 0; i + 2 < faces.Count; i += 3)
        {
            var (a, b, c) = (faces[i], faces[i + 1], faces[i + 2]);
            if (!IsUsable(points, a) || !IsUsable(points, b) || !IsUsable(points, c))
            {
                findings.Add(GroundFindingKind.FaceWithoutPoint, Place(points, a, b, c), i / 3);
                continue;
            }
            var turn = PlanTest.Turn(points[a], points[b], points[c]);
            if (turn == 0)
            {
                findings.Add(GroundFindingKind.FaceWithoutArea, points[a], i / 3);
                continue;
            }
            corners.AddRange(turn > 0 ? [a, b, c] : [a, c, b]);
            numbers.Add(i / 3);
        }
        return ([.. corners], [.. numbers]);
    }

    /// <summary>For each half-edge the one that runs back in the neighbour; -1 at the rim.</summary>
    public static int[] Neighbours(GroundPoint[] points, int[] corners, int[] numbers, GroundFindings findings)
    {
        var twins = new int[corners.Length];
        var first = new int[points.Length];
        var next = new int[corners.Length];
        Array.Fill(twins, -1);
        Array.Fill(first, -1);
        for (var edge = 0; edge < corners.Length; edge++)
        {
            // Edges hang in a chain at the lower of their two corners.
            var low = Math.Min(corners[edge], corners[HalfEdges.Next(edge)]);
            if (IsLaidTwice(corners, edge, first[low], next)) findings.Add(GroundFindingKind.FacesOverlap, points[corners[edge]], numbers[edge / 3]);
            else Pair(corners, edge, first[low], next, twins);
            (next[edge], first[low]) = (first[low], edge);
        }
        return twins;
    }

    private static bool IsLaidTwice(int[] corners, int edge, int other, int[] next)
    {
        for (; other >= 0; other = next[other])
            if (corners[other] == corners[edge] && corners[HalfEdges.Next(other)] == corners[HalfEdges.Next(edge)]) return true;
        return false;
    }

    private static void Pair(int[] corners, int edge, int other, int[] next, int[] twins)
    {
        for (; other >= 0; other = next[other])
        {
            if (corners[other] != corners[HalfEdges.Next(edge)] || corners[HalfEdges.Next(other)] != corners[edge] || twins[other] >= 0) continue;
            (twins[edge], twins[other]) = (other, edge);
            return;
        }
    }

    private static bool IsUsable(GroundPoint[] points, int number) => number >= 0 && number < points.Length && points[number].IsUsable;

    private static GroundPoint Place(GroundPoint[] points, params ReadOnlySpan<int> numbers)
    {
        foreach (var number in numbers)
            if (IsUsable(points, number)) return points[number];
        return default;
    }
}
