using Tautline.Engine.Catalog;
using Tautline.Engine.Comparison;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Limits;

/// <summary>
/// Every limit on which an agency's set differs from the base set, as its source prints it. Values are literals of the sources
/// named in the rule files (the rows of the reference list of installation limits), in the unit they are printed in.
/// </summary>
public sealed class AgencyLimitTests
{
    private const double FeetMetres = 0.3048, InchMetres = 0.0254;

    /// <summary>Set, key, end of the step in metres (0: none), base's value or -1 for none, the set's value, unit, whether the plan is made by it.</summary>
    public static TheoryData<string, string, double, double, double, string, bool> Rows => new()
    {
        // California DOT 80-3.03: bands at 1-ft intervals; ties about 14 in; ties or rings about 18 in; every end braced; line
        // posts braced each 1,000 ft; top wire within 2 in.
        { "caltrans", "band.max", 0, 15, 12, "in", true },
        { "caltrans", "tie.postMax", 0, 15, 14, "in", true },
        { "caltrans", "ring.max", 0, 24, 18, "in", true },
        { "caltrans", "brace.height", 0, 6, 0, "ft", true },
        { "caltrans", "brace.lineInterval", 0, -1, 1000, "ft", false },
        { "caltrans", "wire.topBelow", 0, -1, 2, "in", false },

        // FAA F-162, from memory: ties 12 in, gap 1 to 4 in, grounds 500 ft.
        { "faa", "tie.postMax", 0, 15, 12, "in", true },
        { "faa", "gap.min", 0, 0, 1, "in", true },
        { "faa", "gap.max", 0, 2, 4, "in", true },
        { "faa", "ground.interval", 0, -1, 500, "ft", false },

        // Missouri DOT 607.10.3.1: at most 3 in above finished ground.
        { "missouri-dot", "gap.max", 0, 2, 3, "in", true },

        // MIL-HDBK-1013/10: line footing 10 x 36, terminal 12 x 36, +/-2 deg, rock OD + 1 by 12, wire in the top 6 in, rod at
        // most 50 deg, grounds 1,000 to 1,500 ft (the 2 in over firm ground of MIL-HDBK-1013/1A are the base set's too).
        { "navy", "hole.lineDiameterMin", 0, -1, 10, "in", true },
        { "navy", "hole.lineDepthMin", 0, -1, 36, "in", true },
        { "navy", "hole.terminalDiameterMin", 0, -1, 12, "in", true },
        { "navy", "hole.terminalDepthMin", 0, -1, 36, "in", true },
        { "navy", "post.plumb", 0, -1, 2, "deg", false },
        { "navy", "wire.topBelow", 0, -1, 6, "in", false },
        { "navy", "brace.rodSlope", 0, -1, 50, "deg", false },
        { "navy", "ground.interval", 0, -1, 1500, "ft", false },

        // Ohio DOT 607: encased over 1 deg, anchors 660 ft without rail (the 5-deg corner is the base set's too); Table 710.03-1M:
        // 2.375 line, 2.875 terminal, 1.66 rail; gate posts 2.875 to 1.8 m, 4.000 to 4 m, 6.625 to 5.5 m, 8.625 above.
        { "ohio-dot", "line.encaseTurn", 0, -1, 1, "deg", false },
        { "ohio-dot", "run.maxWithoutRail", 0, -1, 660, "ft", true },
        { "ohio-dot", "post.lineSize", 1.8288, -1, 2.375, "in", true },
        { "ohio-dot", "post.terminalSize", 1.8288, -1, 2.875, "in", true },
        { "ohio-dot", "rail.size", 0, -1, 1.66, "in", true },
        { "ohio-dot", "gate.postSizeFence", 0, -1, 6, "ft", true },
        { "ohio-dot", "gate.postSize", 1.8, -1, 2.875, "in", true },
        { "ohio-dot", "gate.postSize", 4, -1, 4, "in", true },
        { "ohio-dot", "gate.postSize", 5.5, -1, 6.625, "in", true },
        { "ohio-dot", "gate.postSize", 0, -1, 8.625, "in", true },

        // Tremonton 3.18.010: bases 8 and 10 in, 6 in of concrete under the post, 1.900 line, 2.375 terminal, 1-3/8 (1.315) rail.
        // Its spacings on curves are the base set's too.
        { "tremonton", "hole.lineDiameterMin", 0, -1, 8, "in", true },
        { "tremonton", "hole.terminalDiameterMin", 0, -1, 10, "in", true },
        { "tremonton", "hole.concreteBelow", 0, -1, 6, "in", true },
        { "tremonton", "post.lineSize", 1.8288, -1, 1.9, "in", true },
        { "tremonton", "post.terminalSize", 1.8288, -1, 2.375, "in", true },
        { "tremonton", "rail.size", 0, -1, 1.315, "in", true },

        // UFGS-02821A / 32 31 13.53, from memory (its 500-ft run and 15-in bands are the base set's too): no brace at 6 ft or less
        // with a rail, two rods at 12 ft, gap 2 +/- 1/2, 72 hours, wire within 12 in, rock 18 in with 1 in over, grounds 650 ft, 15 deg.
        { "usace", "brace.atHeight", 0, -1, 0, "", true },
        { "usace", "brace.doubleHeight", 0, -1, 12, "ft", false },
        { "usace", "gap.min", 0, 0, 1.5, "in", true },
        { "usace", "gap.max", 0, 2, 2.5, "in", true },
        { "usace", "cure.days", 0, -1, 3, "", false },
        { "usace", "wire.topBelow", 0, -1, 12, "in", false },
        { "usace", "rock.coreDepth", 0, 12, 18, "in", true },
        { "usace", "ground.interval", 0, -1, 650, "ft", false },
        { "usace", "ground.turn", 0, -1, 15, "deg", false },
    };

    private static RuleComparison With(string set) => RuleComparison.Compare(Some.StraightHundred(), Some.Catalog, Some.Rules, RuleSets.Find(set)!);

    [Theory]
    [MemberData(nameof(Rows))]
    public void ALimitDiffersAsItsSourceSays(string set, string key, double upTo, double atBase, double bySet, string unit, bool planned)
    {
        var differs = With(set).Limits.Single(l => l.Rule.Key == key && Math.Abs((l.Step?.UpTo ?? 0) - upTo) < 1e-12);
        var si = unit switch { "in" => InchMetres, "ft" => FeetMetres, _ => 1 };
        Assert.Equal(bySet * si, differs.B!.Value, 12);
        Assert.Equal(set, differs.B.Set);
        if (atBase < 0) Assert.Null(differs.A);
        else Assert.Equal(atBase * si, differs.A!.Value, 12);
        Assert.Equal(planned, differs.Planned);
        Assert.Equal(set is "faa" or "usace", differs.B.From.Verify);
    }

    [Fact]
    public void NoDifferenceIsLeftOutOfTheTable()
    {
        foreach (var set in RuleSets.Names.Skip(1))
            Assert.Equal(Rows.Count(r => r.Data.Item1 == set), With(set).Limits.Count);
    }

    /// <summary>Tremonton 3.18.010: 10 ft from a radius of 500 ft up, 8 to 200, 6 to 100, 5 below; where two printed classes touch the closer holds.</summary>
    [Theory]
    [InlineData(50, 5)]
    [InlineData(100, 5)]
    [InlineData(100.5, 6)]
    [InlineData(200, 6)]
    [InlineData(200.5, 8)]
    [InlineData(499.5, 8)]
    [InlineData(500, 10)]
    [InlineData(5000, 10)]
    public void TheLargestBayOnACurveGoesByItsRadius(double radiusFeet, double bayFeet)
    {
        foreach (var set in new[] { RuleSets.Base, RuleSets.Find("tremonton")! })
            Assert.Equal(bayFeet, set.BayMaxAt(Length.FromFeet(radiusFeet)).Length.Feet, 9);
    }

    [Fact]
    public void ACloserBayOfTheJobHoldsOnEveryCurve()
    {
        var job = RuleSets.Base.AsSpecified([new() { Rule = "bay.max", Value = Length.FromFeet(7).Metres }]);
        Assert.Equal(7, job.BayMaxAt(Length.FromFeet(300)).Length.Feet, 9);
        Assert.Equal(6, job.BayMaxAt(Length.FromFeet(150)).Length.Feet, 9);
    }
}
