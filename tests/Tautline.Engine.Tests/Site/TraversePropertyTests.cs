using CsCheck;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>What holds for every traverse. Metres; legs of a fence, up to 500 m.</summary>
public sealed class TraversePropertyTests
{
    private static readonly Gen<HeadingLeg> genLeg =
        Gen.Select(Gen.Double[0, 360], Gen.Double[0.1, 500]).Select((azimuth, metres) => new HeadingLeg(Direction.FromAzimuthDegrees(azimuth), new Length(metres)));

    private static readonly Gen<SitePoint> genPoint = Gen.Select(Gen.Double[-2000, 2000], Gen.Double[-2000, 2000]).Select((e, n) => Field.Metres(e, n));

    private static readonly Gen<(SitePoint Start, HeadingLeg[] Legs)> genWalk = Gen.Select(genPoint, genLeg.Array[3, 15]);

    [Fact]
    public void CompassRuleClosesToANanometreAndItsCoursesJoin() => genWalk.Always((start, legs) =>
    {
        var adjusted = Field.Loop(start, legs).Adjust();
        Assert.Equal(0, adjusted.Misclosure.Size.Metres, 1e-9);
        Assert.Equal(start, adjusted.Courses[^1].To);
        var at = start;
        foreach (var course in adjusted.Courses)
        {
            at = at.Step(course.Heading, course.Distance);
            Assert.Equal(0, at.DistanceTo(course.To).Metres, 1e-9);
        }
    });

    [Fact]
    public void TraverseBetweenKnownPointsReachesItsEnd() => Gen.Select(genWalk, genPoint).Always((walk, end) =>
    {
        var adjusted = Field.Ok(TraverseReader.FromHeadings(walk.Start, walk.Legs, new() { KnownEnd = end })).Adjust();
        Assert.Equal(0, adjusted.Misclosure.Size.Metres, 1e-9);
        Assert.Equal(end, adjusted.Courses[^1].To);
    });

    [Fact]
    public void AdjustingAClosedTraverseChangesNothing() => genPoint.Array[3, 15].Where(Apart).Always(corners =>
    {
        var closed = Field.Through(corners);
        var adjusted = closed.Adjust();
        for (var i = 0; i < corners.Length; i++)
        {
            Assert.Equal(0, corners[i].DistanceTo(adjusted.Corners[i]).Metres, 1e-9);
            Assert.Equal(closed.Courses[i].Distance.Metres, adjusted.Courses[i].Distance.Metres, 1e-9);
        }
    });

    [Fact]
    public void ReversingATraverseReversesItsMisclosure() => genWalk.Always((start, legs) =>
    {
        var there = Field.Loop(start, legs);
        var back = Field.Loop(start, [.. legs.Reverse().Select(l => l with { Heading = -l.Heading })]);
        Assert.Equal(-there.Misclosure.Latitude.Metres, back.Misclosure.Latitude.Metres, 1e-9);
        Assert.Equal(-there.Misclosure.Departure.Metres, back.Misclosure.Departure.Metres, 1e-9);
        Assert.Equal(there.Perimeter.Metres, back.Perimeter.Metres, 1e-9);
    });

    /// <summary>But for legs straight back, which no angle tells.</summary>
    [Fact]
    public void AnglesCarryTheHeadingsTheyWereReadFrom() => genWalk.Where(w => Turns(w.Legs).All(t => Math.Abs(t) < 180)).Always((start, legs) =>
    {
        var turns = Turns(legs);
        foreach (var kind in Enum.GetValues<AngleKind>())
        {
            AngleLeg[] read = [.. legs.Select((l, i) => new AngleLeg(l.Distance, i < turns.Length ? Read(turns[i], kind) : null))];
            var carried = Field.Ok(TraverseReader.FromAngles(start, legs[0].Heading, read, kind));
            for (var i = 0; i < legs.Length; i++) Assert.Equal(0, Direction.Between(legs[i].Heading, carried.Courses[i].Heading), 1e-9);
        }
    });

    private static double[] Turns(HeadingLeg[] legs) => [.. legs.Skip(1).Select((l, i) => Direction.Between(legs[i].Heading, l.Heading))];

    private static double Read(double turn, AngleKind kind) => kind switch
    {
        AngleKind.OnRight => 180 - turn,
        AngleKind.OnLeft => 180 + turn,
        _ => turn,
    };

    private static bool Apart(SitePoint[] corners)
        => corners.Select((c, i) => c.DistanceTo(corners[(i + 1) % corners.Length]).Metres).Min() > 0.1;
}
