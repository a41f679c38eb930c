using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>Traverses worked by hand, and what is told of bad notes.</summary>
public sealed class TraverseTests
{
    /// <summary>
    /// N 297, E 396, then 507 back along the hypotenuse of 495: 12 too long, 12 in 1200. The hypotenuse runs 0.8 west and 0.6 south, so
    /// the loop ends 9.6 west and 7.2 south. Shares 297/1200 = 0.2475 and 693/1200 = 0.5775 of 9.6 east and 7.2 north move the corners.
    /// Area: (2.376 * 301.158 - 401.544 * 298.782) / 2 = 59,629.284 turned about; unadjusted 297 * 396 / 2 = 58,806.
    /// </summary>
    [Fact]
    public void TriangleWithTwelveFeetTooMuch()
    {
        var loop = Slipped();
        Assert.Equal(1200, loop.Perimeter.Feet, 1e-9);
        Assert.Equal(12, loop.Misclosure.Size.Feet, 1e-9);
        Assert.Equal(100, loop.Precision, 1e-9);
        Assert.Equal(233.130102, loop.Misclosure.Heading!.Value.AzimuthDegrees, 1e-6);
        Assert.Equal(58_806, loop.Area!.Value.SquareFeet, 1e-6);
        var adjusted = loop.Adjust();
        Field.Near(298.782, 2.376, adjusted.Corners[1], 1e-9);
        Field.Near(301.158, 401.544, adjusted.Corners[2], 1e-9);
        Assert.Equal(default, adjusted.Courses[2].To);
        Assert.Equal(59_629.284, adjusted.Area!.Value.SquareFeet, 1e-3);
        Assert.Equal(298.791447, adjusted.Courses[0].Distance.Feet, 1e-6); // sqrt(298.782^2 + 2.376^2)
        Assert.Equal(0.455622, adjusted.Courses[0].Heading.AzimuthDegrees, 1e-6); // atan(2.376 / 298.782)
    }

    /// <summary>N 100, E 100 should reach 101 east, 99 north: 1 short to the east, 1 over to the north, half of each at the corner.</summary>
    [Fact]
    public void TraverseBetweenTwoKnownPointsEndsOnTheSecond()
    {
        var link = Field.Ok(TraverseReader.FromHeadings(
            default, [Field.Leg("due N", 100), Field.Leg("due E", 100)], new() { KnownEnd = Field.NorthEast(99, 101) }));
        Assert.Equal(1, link.Misclosure.Latitude.Feet, 1e-9);
        Assert.Equal(-1, link.Misclosure.Departure.Feet, 1e-9);
        Assert.Null(link.Area);
        Assert.Equal(141.421356, link.Precision, 1e-6); // 200 / sqrt 2
        var adjusted = link.Adjust();
        Field.Near(99.5, 0.5, adjusted.Courses[0].To, 1e-9);
        Assert.Equal(Field.NorthEast(99, 101), adjusted.Courses[1].To);
    }

    [Theory]
    [InlineData(AngleKind.OnRight, 90, "N E S W")]
    [InlineData(AngleKind.OnLeft, 90, "N W S E")]
    [InlineData(AngleKind.Turn, 90, "N E S W")]
    [InlineData(AngleKind.Turn, -90, "N W S E")]
    public void FourRightAnglesCloseToTheBitHoweverTheyWereRead(AngleKind kind, double angle, string ways)
    {
        var square = Field.Ok(TraverseReader.FromAngles(default, Direction.DueNorth, [.. Enumerable.Repeat(Leg(100, angle), 4)], kind));
        Assert.Equal([.. ways.Split(' ').Select(w => BearingText.Parse("due " + w).Value)], square.Courses.Select(c => c.Heading));
        Assert.Equal(0, square.Angles!.MisclosureDegrees);
        Assert.Equal(double.PositiveInfinity, square.Precision);
        Assert.Null(square.Misclosure.Heading);
        Assert.Equal(10_000, square.Area!.Value.SquareFeet, 1e-6);
    }

    /// <summary>91 + 90 + 90 + 89.4 = 360.4: a tenth off each. Turns 180 - 90.9 = 89.1, then 180 - 89.9 = 90.1 twice.</summary>
    [Fact]
    public void AngularMisclosureIsSpreadInEqualShares()
    {
        AngleLeg[] legs = [Leg(100, 91), Leg(100, 90), Leg(100, 90), Leg(100, 89.4)];
        var asRead = Field.Ok(TraverseReader.FromAngles(default, Direction.DueNorth, legs, AngleKind.OnRight));
        Assert.Equal(360, asRead.Angles!.ExpectedDegrees);
        Assert.Equal(0.4, asRead.Angles.MisclosureDegrees, 1e-12);
        Assert.Equal([0, 89, 179, 269], asRead.Courses.Select(c => Math.Round(c.Heading.AzimuthDegrees, 9)));
        var spread = Field.Ok(TraverseReader.FromAngles(default, Direction.DueNorth, legs, AngleKind.OnRight, new() { SpreadAngles = true }));
        Assert.Equal(-0.1, spread.Angles!.CorrectionDegrees, 1e-12);
        Assert.Equal([0, 89.1, 179.2, 269.3], spread.Courses.Select(c => Math.Round(c.Heading.AzimuthDegrees, 9)));
    }

    /// <summary>North, right 90, right 89, and then it should run south: 1 short of 180, half to each.</summary>
    [Fact]
    public void AnglesBetweenTwoKnownHeadingsAreChecked()
    {
        var terms = new TraverseTerms { KnownEnd = Field.NorthEast(100, 100), KnownHeading = Direction.DueSouth, SpreadAngles = true };
        var link = Field.Ok(TraverseReader.FromAngles(default, Direction.DueNorth, [Leg(100, 90), Leg(100, 89)], AngleKind.Turn, terms));
        Assert.Equal(-1, link.Angles!.MisclosureDegrees, 1e-12);
        Assert.Equal(90.5, link.Courses[1].Heading.AzimuthDegrees, 1e-9);
    }

    [Fact]
    public void LastAngleMayBeMissingAndThenNothingIsChecked()
    {
        var square = Field.Ok(TraverseReader.FromAngles(
            default, Direction.DueNorth, [Leg(100, 90), Leg(100, 90), Leg(100, 90), new(Length.FromFeet(100), null)], AngleKind.OnRight));
        Assert.Null(square.Angles);
        Assert.Equal(Direction.DueWest, square.Courses[3].Heading);
    }

    /// <summary>Three legs of 1 due north miss by 3: the correction of each is the whole leg.</summary>
    [Fact]
    public void CourseThatVanishesInTheAdjustmentKeepsItsHeading()
    {
        var line = Field.Loop(default, Field.Leg("due N", 1), Field.Leg("due N", 1), Field.Leg("due N", 1)).Adjust();
        Assert.All(line.Courses, c => Assert.Equal(0, c.Distance.Feet, 1e-9));
        Assert.All(line.Courses, c => Assert.Equal(Direction.DueNorth, c.Heading));
    }

    /// <summary>The figure of eight of area 0: two triangles of 50 against each other.</summary>
    [Fact]
    public void LoopsOfACrossedLineCountAgainstEachOther()
        => Assert.Equal(0, CoordinateArea.Of([Field.NorthEast(0, 0), Field.NorthEast(10, 10), Field.NorthEast(0, 10), Field.NorthEast(10, 0)]).SquareFeet, 1e-9);

    [Fact]
    public void PrecisionPoorerThanAskedIsWarnedOfAndTheTraverseStands()
    {
        var terms = new TraverseTerms { LeastPrecision = 500 };
        var poor = TraverseReader.FromHeadings(default, [Field.Leg("due N", 297), Field.Leg("due E", 396), Back()], terms);
        Assert.True(poor.Ok);
        var told = Assert.Single(poor.Problems);
        Assert.Equal((ProblemCode.TraversePoor, Severity.Warning), (told.Code, told.Severity));
        Assert.Equal(
            "The traverse misses its end by 12' 0\" in 1200' 0\", 1:100; asked for is 1:500.",
            ProblemText.Message(told, UnitSystem.UsCustomary));
        Assert.Empty(TraverseReader.FromHeadings(default, [Field.Leg("due N", 297), Field.Leg("due E", 396), Back()], terms with { LeastPrecision = 100 }).Problems);
    }

    private static readonly HeadingLeg north = Field.Leg("due N", 10);

    private static IEnumerable<(ProblemCode Code, string Path, Surveyed<Traverse> Told)> Slips()
    {
        yield return (ProblemCode.TraverseShort, "legs", TraverseReader.FromHeadings(default, [north, north]));
        yield return (ProblemCode.TraverseShort, "legs", TraverseReader.FromHeadings(default, [north], new() { KnownEnd = Field.NorthEast(10, 0) }));
        yield return (ProblemCode.TraverseShort, "legs", TraverseReader.FromAngles(default, Direction.DueNorth, [], AngleKind.Turn));
        yield return (ProblemCode.TraverseLeg, "legs[1].distance", Headings(new(Direction.DueNorth, Length.Zero)));
        yield return (ProblemCode.TraverseLeg, "legs[1].distance", Headings(new(Direction.DueNorth, new(-1))));
        yield return (ProblemCode.NotFinite, "legs[1].distance", Headings(new(Direction.DueNorth, new(double.NaN))));
        yield return (ProblemCode.NotFinite, "legs[1].distance", Headings(new(Direction.DueNorth, new(double.PositiveInfinity))));
        yield return (ProblemCode.HeadingMissing, "legs[1].heading", Headings(new(default, new(1))));
        yield return (ProblemCode.HeadingMissing, "first", TraverseReader.FromAngles(default, default, Angles(90, 90, 90, 90), AngleKind.Turn));
        yield return (ProblemCode.NotFinite, "start", TraverseReader.FromHeadings(new(new(double.NaN), default), [north, north, north]));
        yield return (ProblemCode.TraverseAngleMissing, "legs[1].angle", Interior(90, null, 90, 90));
        yield return (ProblemCode.TraverseAngle, "legs[1].angle", Interior(90, 0, 90, 90));
        yield return (ProblemCode.TraverseAngle, "legs[1].angle", Interior(90, 360, 90, 90));
        yield return (ProblemCode.TraverseAngle, "legs[1].angle", Interior(90, double.NaN, 90, 90));
        yield return (ProblemCode.TraverseAngle, "legs[2].angle", TraverseReader.FromAngles(default, Direction.DueNorth, Angles(90, 90, 180, 90), AngleKind.Turn));
        yield return (ProblemCode.TraverseAngleSum, "legs", Interior(90, 90, 90, 270)); // one read on the outer side
        yield return (ProblemCode.TraverseAngleSum, "legs", Interior(270, 270, 270, 270)); // all of them
        yield return (ProblemCode.TraverseAngleSum, "legs", Interior(90, 90, 90, 92.01)); // more than 1 degree * sqrt 4
        yield return (ProblemCode.TraverseAngleSum, "legs", TraverseReader.FromAngles(default, Direction.DueNorth, Angles(90, -90, 90, -90), AngleKind.Turn));
    }

    public static TheoryData<int> SlipNumbers => [.. Enumerable.Range(0, Slips().Count())];

    [Theory]
    [MemberData(nameof(SlipNumbers))]
    public void SlipIsToldAtItsPlaceAndThereIsNoTraverse(int number)
    {
        var (code, path, told) = Slips().ElementAt(number);
        Assert.Null(told.Value);
        var problem = Assert.Single(told.Problems);
        Assert.Equal((code, path), (problem.Code, problem.Place.Path));
        Assert.DoesNotContain("{", ProblemText.Message(problem, UnitSystem.Metric), StringComparison.Ordinal);
        Assert.NotEmpty(ProblemText.Hint(problem, UnitSystem.Metric));
    }

    [Fact]
    public void AnglesWithinTheSlipPass() => Assert.True(Interior(90, 90, 90, 91.99).Ok);

    [Fact]
    public void EverySlipIsToldAtOnce()
    {
        var told = TraverseReader.FromHeadings(default, [new(default, new(-1)), new(default, new(double.NaN))]);
        Assert.Equal(
            [ProblemCode.TraverseShort, ProblemCode.HeadingMissing, ProblemCode.TraverseLeg, ProblemCode.HeadingMissing, ProblemCode.NotFinite],
            told.Problems.Select(p => p.Code));
    }

    private static Traverse Slipped() => Field.Loop(default, Field.Leg("due N", 297), Field.Leg("due E", 396), Back());

    private static HeadingLeg Back() => new(new Direction(-0.8, -0.6), Length.FromFeet(507));

    private static AngleLeg Leg(double feet, double angle) => new(Length.FromFeet(feet), angle);

    private static AngleLeg[] Angles(params double?[] angles) => [.. angles.Select(a => new AngleLeg(Length.FromFeet(100), a))];

    private static Surveyed<Traverse> Interior(params double?[] angles)
        => TraverseReader.FromAngles(default, Direction.DueNorth, Angles(angles), AngleKind.OnRight);

    private static Surveyed<Traverse> Headings(HeadingLeg second) => TraverseReader.FromHeadings(default, [north, second, north]);
}
