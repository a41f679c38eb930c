using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>Writes field notes as the publications print them. Feet and metres are the same arithmetic; feet stand for the printed unit.</summary>
internal static class Field
{
    public static HeadingLeg Leg(string bearing, double feet)
    {
        var heading = BearingText.Parse(bearing);
        Assert.True(heading.Ok, bearing);
        return new HeadingLeg(heading.Value, Length.FromFeet(feet));
    }

    public static SitePoint NorthEast(double north, double east) => new(Length.FromFeet(east), Length.FromFeet(north));

    public static SitePoint Metres(double east, double north) => new(new Length(east), new Length(north));

    public static T Ok<T>(Surveyed<T> surveyed)
        where T : class
    {
        Assert.True(surveyed.Ok, string.Join('\n', surveyed.Problems));
        return surveyed.Value;
    }

    public static Traverse Loop(SitePoint start, params HeadingLeg[] legs) => Ok(TraverseReader.FromHeadings(start, legs));

    /// <summary>A loop through given corners.</summary>
    public static Traverse Through(params SitePoint[] corners)
        => Loop(corners[0], [.. corners.Select((c, i) => Between(c, corners[(i + 1) % corners.Length]))]);

    public static HeadingLeg Between(SitePoint from, SitePoint to)
        => new(Direction.FromVector((to.East - from.East).Metres, (to.North - from.North).Metres), from.DistanceTo(to));

    public static void Near(double[] printed, IEnumerable<Length> found, double tolerance)
    {
        var feet = found.Select(f => f.Feet).ToArray();
        Assert.Equal(printed.Length, feet.Length);
        for (var i = 0; i < printed.Length; i++) Assert.Equal(printed[i], feet[i], tolerance);
    }

    public static void Near(double north, double east, SitePoint found, double tolerance)
    {
        Assert.Equal(north, found.North.Feet, tolerance);
        Assert.Equal(east, found.East.Feet, tolerance);
    }
}
