using Tautline.Engine.Catalog;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>How high a post stands over measured ground. Heights over the job's datum, metres.</summary>
/// <param name="Ground">At the post.</param>
/// <param name="Fabric">Top of the fabric, the higher one where two fabrics end.</param>
/// <param name="Leaf">Top of the gate leaf that hangs or closes here.</param>
public readonly record struct PostRise(double Ground, double Fabric, double? Leaf)
{
    public double Top => Leaf is { } leaf ? Math.Max(Fabric, leaf) : Fabric;
}

/// <summary>A stretch of a line over which one top line runs: fabric of one height without an opening.</summary>
/// <param name="Stations">Of its posts.</param>
public sealed record FitPiece(ResolvedSpec Spec, IReadOnlyList<long> Stations, FitInput Input, FittedLine Fitted);

/// <summary>Fits the top line of one line to its measured ground, and raises its posts to it.</summary>
public static class FitStage
{
    /// <summary>Where a closed line meets its own start its tops may differ by so much before both are held at their mean.</summary>
    private const double Meets = 1e-4;

    public static SetLine Fit(SetLine line)
    {
        var pieces = FitPieces.Of(line).Select(p => new FitPiece(p.Spec, p.Stations, p.Input, GroundFit.Fit(p.Input))).ToList();
        if (line.Site.Line.Closed) Close(line, pieces);
        return line with { Posts = Raised(line, pieces), Pieces = pieces };
    }

    /// <summary>The top at the start of a closed line is the top at its end.</summary>
    private static void Close(SetLine line, List<FitPiece> pieces)
    {
        if (pieces.Count == 0) return;
        var (first, last) = (pieces[0], pieces[^1]);
        if (first.Stations[0] != 0 || last.Stations[^1] != line.Site.Chain.LevelNm || first.Spec.Height.Nanometres != last.Spec.Height.Nanometres) return;
        var (start, end) = (first.Fitted.Tops[0], last.Fitted.Tops[^1]);
        if (Math.Abs(start - end) <= Meets || first.Input.Posts[0].Pinned is not null) return;
        var mean = (start + end) / 2;
        pieces[0] = Pinned(pieces[0], 0, mean);
        pieces[^1] = Pinned(pieces[^1], pieces[^1].Stations.Count - 1, mean);
    }

    private static FitPiece Pinned(FitPiece piece, int post, double top)
    {
        var input = piece.Input with { Posts = [.. piece.Input.Posts.Select((p, i) => i == post ? p with { Pinned = top } : p)] };
        return piece with { Input = input, Fitted = GroundFit.Fit(input) };
    }

    private static List<PlacedPost> Raised(SetLine line, IReadOnlyList<FitPiece> pieces)
    {
        var ground = line.Site.Chain.Ground!;
        var sides = Sides(line, pieces);
        var leaves = Leaves(line);
        return [.. line.Posts.Select(p => p with { Grade = Grade(p, sides), Rise = Rise(p, ground, sides, leaves) })];
    }

    /// <summary>By station the top of each fabric that reaches a post, and its slope there.</summary>
    private static ILookup<long, (double Top, double Slope)> Sides(SetLine line, IReadOnlyList<FitPiece> pieces)
    {
        List<(long Station, double Top, double Slope)> sides = [];
        foreach (var piece in pieces)
            foreach (var bay in piece.Fitted.Bays)
            {
                sides.Add((piece.Stations[bay.Index], bay.TopFrom, bay.Slope));
                sides.Add((AtStart(line, piece.Stations[bay.Index + 1]), bay.TopTo, bay.Slope));
            }
        return sides.ToLookup(s => s.Station, s => (s.Top, s.Slope));
    }

    /// <summary>The end of a closed line is its start.</summary>
    private static long AtStart(SetLine line, long station) => line.Site.Line.Closed && station == line.Site.Chain.LevelNm ? 0 : station;

    /// <summary>Top of the leaf at both posts of every gate: level, over the highest ground of the opening.</summary>
    private static ILookup<long, double> Leaves(SetLine line)
    {
        List<(long Station, double Top)> leaves = [];
        foreach (var opening in TerminalStage.Stretches(line.Laid.Terminals).Where(s => s.IsOpening))
        {
            var spec = line.Site.Chain.LegFrom(opening.FromNm).Spec;
            var top = line.Site.Chain.Ground!.HighestWithin(opening.FromNm, opening.ToNm) + FitPieces.Gap(line.Site.Line, spec) + spec.Height.Metres;
            leaves.Add((opening.FromNm, top));
            leaves.Add((AtStart(line, opening.ToNm), top));
        }
        return leaves.ToLookup(l => l.Station, l => l.Top);
    }

    private static double Grade(PlacedPost post, ILookup<long, (double Top, double Slope)> sides)
        => sides[post.StationNm].Select(s => s.Slope).DefaultIfEmpty(0).MaxBy(Math.Abs);

    private static PostRise Rise(
        PlacedPost post, GroundLine ground, ILookup<long, (double Top, double Slope)> sides, ILookup<long, double> leaves)
    {
        var height = ground.HeightAt(post.StationNm);
        double? leaf = leaves.Contains(post.StationNm) ? leaves[post.StationNm].Max() : null;
        var fabric = sides.Contains(post.StationNm) ? sides[post.StationNm].Max(s => s.Top) : leaf ?? height + post.Spec.Height.Metres;
        return new PostRise(height, fabric, leaf);
    }
}
