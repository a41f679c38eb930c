using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Reads the arc of a leg between its two vertices.</summary>
internal static class CurveReader
{
    public static PlacedCurve? Read(LegCurve? curve, Vertex from, Vertex to, Length chord, Place place, ProblemList problems)
    {
        if (curve is null) return null;
        var path = $"{place.Path}.leg.curve";
        if (curve.Bends is not ("left" or "right"))
            problems.Add(ProblemCode.SpecChoice, place with { Path = $"{path}.bends" }, curve.Bends, "\"left\" or \"right\"");
        if (chord.Nanometres < SiteStage.ShortestLeg.Nanometres) return null; // told as a leg that is too short
        if (Curve.FromRadiusAndChord(curve.Radius, chord).Value is not { } arc)
        {
            problems.Add(ProblemCode.CurveTight, place with { Path = $"{path}.radius" }, curve.Radius, chord, chord / 2);
            return null;
        }
        var bulge = curve.Bends == "left" ? arc.Bulge : -arc.Bulge;
        return PlacedCurve.FromBulge(new(from.East, from.North), new(to.East, to.North), bulge, Length.Zero).Value;
    }
}
