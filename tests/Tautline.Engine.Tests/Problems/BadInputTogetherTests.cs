using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Site.TapeBook;
using Tautline.Engine.Tests.Surveys;

namespace Tautline.Engine.Tests.Problems;

/// <summary>Whatever is wrong with a job is told in one go, each slip by its code at its place.</summary>
public sealed class BadInputTogetherTests
{
    /// <summary>60, 90, 60 and 83 ft: 293 ft walked, 7 ft short, 1:41; 'close' would take it for a leg, the book states that it is none.</summary>
    private const string Book = """
        spec fence height 6' brace no
        line yard
        leg 60'
        no-dig 23' to 26' clear 1' "water"
        no-dig 20' to 24' "gas"
        R 90
        leg 90'
        R 90
        leg 60'
        gate walk 4' from 20'
        R 90
        leg 83'
        close within 8'
        adjust
        """;

    private static Job Read() => TapeBookReader.Read(Book.ReplaceLineEndings("\n")).Job!;

    private static Job Bent(Job job, int vertex, double radiusFeet)
    {
        var line = job.Lines[0];
        var curve = new LegCurve { Radius = Length.FromFeet(radiusFeet), Bends = "left" };
        return job with
        {
            Lines = [line with { Vertices = [.. line.Vertices.Select((v, i) => i == vertex ? v with { Leg = v.Leg! with { Curve = curve } } : v)] }],
        };
    }

    private static (ProblemCode, string, double?) Told(Problem p) => (p.Code, p.Place.Path, p.Place.Station is { } s ? Math.Round(s.Feet, 3) : null);

    [Fact]
    public void TheBookTellsAMisclosureOf1In41WhereItIsClosed()
    {
        var told = TapeBookReader.Read(Book.ReplaceLineEndings("\n")).Problems;
        Assert.Equal([(13, "close-misclosure"), (14, "adjust-moved")], told.Select(p => (p.Line, p.Code)));
        Assert.Equal("The legs end 7' 0\" east of the start after 293' 0\" walked, 1:41. The last leg is led to the start.", told[0].Message);
    }

    /// <summary>The same notes as a traverse that is asked for 1:100.</summary>
    [Fact]
    public void ATraversePoorerThanItsStatedRatioIsWarnedOf()
    {
        HeadingLeg[] legs = [Field.Leg("due N", 60), Field.Leg("due E", 90), Field.Leg("due S", 60), Field.Leg("due W", 83)];
        var told = Assert.Single(TraverseReader.FromHeadings(default, legs, new TraverseTerms { LeastPrecision = 100 }).Problems);
        Assert.Equal((ProblemCode.TraversePoor, "legs"), (told.Code, told.Place.Path));
        Assert.Equal("The traverse misses its end by 7' 0\" in 293' 0\", 1:41; asked for is 1:100.", ProblemText.Message(told, UnitSystem.UsCustomary));
    }

    /// <summary>
    /// Errors and what is only worth knowing, in one plan. The first corner does not move in the adjustment; the second leg, 92 ft and
    /// a bit, needs a radius of 46 ft.
    /// </summary>
    [Fact]
    public void OverlappingStretchesABuiltPostInThemATightCurveAndAGateOnAnArcAreToldTogether()
    {
        var job = Bent(Bent(Read(), 1, 40), 2, 100);
        var built = new BuiltFacts([new(new("b1"), new("yard/leg1"), Length.FromFeet(23.5)), new(new("b2"), new("yard/leg1"), Length.FromFeet(12))]);
        var plan = Some.Plan(job, built);
        var told = plan.Problems.Select(Told).ToList();
        Assert.Contains((ProblemCode.ZonesOverlap, "obstacles[0]", 23.0), told);
        Assert.Equal(2, told.Count(t => t == (ProblemCode.BuiltInZone, "built", 23.5)));
        Assert.Contains((ProblemCode.CurveTight, "lines[0].vertices[1].leg.curve.radius", null), told);
        Assert.Contains(told, t => t.Item1 == ProblemCode.GateOnCurve && t.Item2 == "gates[0]");
        Assert.Equal(5, told.Count(t => t.Item1 is not (ProblemCode.BraceQuestion or ProblemCode.RollUncalibrated or ProblemCode.HabitOverLimit)));
        Assert.True(plan.HasErrors);
        Assert.Empty(plan.Lines);
    }

    /// <summary>Without the two errors there is a plan: both stretches are kept free, and it goes through the built post in them.</summary>
    [Fact]
    public void WhatIsNoErrorIsToldWithThePlan()
    {
        var plan = Some.Plan(Read(), new BuiltFacts([new(new("b1"), new("yard/leg1"), Length.FromFeet(23.5))]));
        Assert.Contains((ProblemCode.ZonesOverlap, "obstacles[0]", 23.0), plan.Problems.Select(Told));
        var stations = plan.Lines[0].Posts.Select(p => Math.Round(p.Station.Feet, 6)).ToList();
        Assert.Contains(23.5, stations);
        // A line post of 1.900 in has a hole of 8 in: 20 - 4/12 and 26 + 1 + 4/12 ft.
        Assert.DoesNotContain(stations, s => s is > 19.666667 and < 27.333333 and not 23.5);
    }

    [Theory]
    [InlineData(ProblemCode.ZonesOverlap, "The no-dig stretches 'yard/no-dig2' and 'yard/no-dig1' overlap by 1' 0\".", "The plan keeps posts off both. If one mark was entered twice, take one out.")]
    [InlineData(ProblemCode.BuiltInZone, "The post 'b1' stands or is pinned in the no-dig stretch 'yard/no-dig1' or its clearance.", "Compare the mark with what was dug, and have the line exposed before more is done here. The plan goes through the post.")]
    public void TheWordsNameBoth(ProblemCode code, string message, string hint)
    {
        var plan = Some.Plan(Read(), new BuiltFacts([new(new("b1"), new("yard/leg1"), Length.FromFeet(23.5))]));
        var problem = plan.Problems.First(p => p.Code == code);
        Assert.Equal(message, ProblemText.Message(problem, UnitSystem.UsCustomary));
        Assert.Equal(hint, ProblemText.Hint(problem, UnitSystem.UsCustomary));
    }

    /// <summary>Stretches that only touch do not overlap; one inside another does, and each is told once with the one that goes furthest.</summary>
    [Theory]
    [InlineData(10, 12, 12, 14, 20, 22, 0)]
    [InlineData(10, 20, 12, 14, 15, 16, 2)]
    [InlineData(10, 13, 12, 15, 14, 17, 2)]
    [InlineData(10, 12, 10, 12, 10, 12, 2)]
    public void EachOverlapIsToldOnce(double a, double aTo, double b, double bTo, double c, double cTo, int told)
    {
        Obstacle Zone(string id, double from, double to)
            => new() { Id = new(id), Leg = new("main/leg1"), Kind = Obstacle.NoDig, From = Length.FromFeet(from), To = Length.FromFeet(to) };
        var plan = Some.Plan(Some.StraightHundred() with { Obstacles = [Zone("c", c, cTo), Zone("a", a, aTo), Zone("b", b, bTo)] });
        Assert.Equal(told, plan.Problems.Count(p => p.Code == ProblemCode.ZonesOverlap));
    }
}
