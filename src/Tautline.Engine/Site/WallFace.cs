using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Posts on brackets on the face of a wall: what the job must say, and what the crew must know.</summary>
internal static class WallFace
{
    public static void Check(Obstacle wall, SiteLeg leg, Length post, Place place, ProblemList problems)
    {
        if (wall.Depth is not null and not { Metres: > 0 and < 100 })
            problems.Add(ProblemCode.BracketDepth, place with { Path = $"{place.Path}.depth" }, wall.Id.Value, wall.Depth.Value);
        if (wall.Width is { } width) problems.Add(ProblemCode.WallFaceNote, place, wall.Id.Value, (width + post) / 2);
        else problems.Add(ProblemCode.WallFaceQuestion, place with { Path = $"{place.Path}.width" }, wall.Id.Value);
        problems.Add(ProblemCode.BracketProof, place, wall.Id.Value, wall.Depth ?? leg.Spec.Rules.BracketDepth.Length);
    }
}
