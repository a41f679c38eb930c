using Tautline.Engine.Site.Ground;
using Tautline.Formats.Import;
using static Tautline.Formats.Ground.GroundFindings;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Ground.Placing;

/// <summary>Everything placing can say, in one place.</summary>
internal static class PlacementFindings
{
    public static readonly Finding NotReady = new(
        Error, "NotReady",
        "The ground file has open questions or errors, so it cannot be placed.",
        "Answer the questions and read it again.");

    public static Finding JobHasNoGrid(string system) => new(
        Error, "JobHasNoGrid",
        $"The ground is in {system}, and the job is tied to no map.",
        "Tie the job to a grid, or state that the ground's coordinates are the job's own.");

    public static Finding UnknownSystem(string which, int code) => new(
        Error, "UnknownSystem",
        Text($"The {which} is in EPSG:{code}, which is not a grid this program knows."),
        "Have it saved in UTM or a listed state grid.");

    public static Finding Placed(string how) => new(Information, "Placed", how);

    public static Finding TakenAsJobs(string grid) => new(
        Information, "TakenAsJobs",
        $"The job lies on {grid}; the ground's coordinates are taken as the job's own metres from its origin, as stated.",
        "Check that it was measured from that origin.");

    public static Finding NoDatumChange(string file, string job) => new(
        Warning, "NoDatumChange",
        $"The ground is on {file} and the job on {job}. No change of datum is made: the ground may lie one to two metres off in plan.",
        "On steep ground, have both brought to one datum.");

    public static Finding FarAway(double kilometres) => new(
        Warning, "FarAway",
        Text($"The ground lies {kilometres:0.#} km from the job's origin."),
        "Check the systems of both, and that it is the right file.");

    public static Finding FactorForOtherHeight(double implied, double mean) => new(
        Warning, "FactorForOtherHeight",
        Text($"The job's ground lengths are for a height of about {implied:0} m; this ground lies at {mean:0} m. Lengths of the job are off by {Math.Abs(mean - implied) / 6371:0.000} m in 1000 m."),
        "Import the outline again with the site's height.");

    public static Finding NoSurface => new(
        Error, "NoSurface",
        "Fewer than three points with a height that are not in one line: there is no ground between them.",
        "Check the heights and the columns.");

    public static Finding Made(int points, int faces) => new(
        Information, "Triangulated",
        Text($"{Count(points, "point", "points")} with a height were triangulated: {Count(faces, "face", "faces")}. What the ground does between them is not known."));

    public static Finding NoPlaceForPoint(int count) => new(
        Warning, "NoPlaceForPoint",
        Text($"{Count(count, "point has", "points have")} no place on the job's grid and {(count == 1 ? "is" : "are")} left out."));

    /// <summary>What the Engine found wrong with the data; point names the point of a number.</summary>
    public static Finding? Of(GroundFinding found, Func<double, string> point)
    {
        var (where, f) = (Text($"at E {found.East:0.00}, N {found.North:0.00}"), found.Figures);
        return found.Kind switch
        {
            GroundFindingKind.UnusablePoint => new(Warning, "UnusablePoint", $"{point(f[0])} is no place or height; it is left out."),
            GroundFindingKind.TwoHeights => new(
                Warning, "TwoHeights",
                Text($"{point(f[2])} and {point(f[3])} stand at one place {where} with heights {f[0]:0.###} and {f[1]:0.###} m; the first is taken.")),
            GroundFindingKind.BreaklinesCross => new(
                Warning, "BreaklinesCross",
                Text($"Two breaklines cross {where} at heights {f[0]:0.###} and {f[1]:0.###} m; the piece of the later one is left out."),
                "Check the codes."),
            GroundFindingKind.BreaklinesJoined => new(
                Information, "BreaklinesJoined",
                Text($"Two breaklines cross {where} at one height, {f[0]:0.###} m, and were joined.")),
            GroundFindingKind.PointOnBreakline => new(
                Warning, "PointOnBreakline",
                Text($"A point {where} lies on a breakline but {f[0] - f[1]:0.###} m off its height; the line goes through the point.")),
            GroundFindingKind.ShortRing => new(Warning, "ShortRing", $"A boundary {where} has fewer than three corners and is left out."),
            GroundFindingKind.FaceWithoutPoint => new(
                Warning, "FaceWithoutPoint",
                $"A face {where} has a corner that is no place or height; it is left out."),
            GroundFindingKind.FaceWithoutArea => new(
                Information, "FaceWithoutArea",
                $"A face {where} stands upright or is a line; it is left out."),
            GroundFindingKind.FacesOverlap => new(Warning, "FacesOverlap", $"Faces overlap {where}; either may give the height there."),
            _ => null,
        };
    }
}
