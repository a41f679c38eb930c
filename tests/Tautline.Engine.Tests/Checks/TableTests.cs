using System.Globalization;
using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Checks;

/// <summary>The tables of docs/checks/first-light.md, part C: every literal by hand or published, source in its row.</summary>
public sealed class TableTests
{
    private static string Row(string table, string item)
        => FirstLightTests.Csv().Single(r => r[0] == table && r[1] == item)[2];

    private static void Agrees(string table, string item, double found)
    {
        var text = found.ToString("0.##########", CultureInfo.InvariantCulture);
        Assert.True(FirstLightTests.Agrees(Row(table, item), text), $"{item}: by hand {Row(table, item)}, found {text}");
    }

    private static ResolvedSpec Resolved(double inches, bool calibrated = false)
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 50)]), Some.Spec(inches / 12)) with
        {
            Calibrations = calibrated ? [Some.Calibration()] : [],
        };
        return Some.Plan(job).Basis.Specs.Single();
    }

    /// <summary>ASTM F567-07, 5.1, as installation.md section 2 works it out.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(12)]
    public void HoleDepthByF567(int feet)
        => Agrees("C1", $"hole depth for {feet} ft", new Length(PostFormulas.HoleDepth<Plain>(Resolved(feet * 12), null, Some.Rules).Value).Inches);

    /// <summary>ASTM F567-07, 5.1: 4 times the post to 4 in, 3 times above; augers common practice, no source.</summary>
    [Theory]
    [InlineData("1.315")]
    [InlineData("1.660")]
    [InlineData("1.900")]
    [InlineData("2.375")]
    [InlineData("2.875")]
    [InlineData("3.500")]
    [InlineData("4.000")]
    [InlineData("6.625")]
    [InlineData("8.625")]
    public void HoleDiameterByF567(string od)
    {
        var post = Some.Catalog.FindSection($"{od}-sch40")!;
        var why = PostFormulas.HoleDiameter<Traced>(post, null, Some.Rules);
        Agrees("C1", $"hole auger for {od} OD", new Length(why.Value).Inches);
        Agrees("C1", $"hole by rule for {od} OD", new Length(((Operation)why.Expr).Of[0].Value).Inches);
    }

    public static TheoryData<string, string> GateRows()
    {
        var rows = new TheoryData<string, string>();
        foreach (var row in FirstLightTests.Csv().Where(r => r[0] == "C2")) rows.Add(row[1], row[2]);
        return rows;
    }

    /// <summary>MIL-HDBK-1013/10 Table 1 over 6 ft; common practice, no source, up to 6 ft.</summary>
    [Theory]
    [MemberData(nameof(GateRows))]
    public void GatePostByLeaf(string item, string expected)
    {
        var words = item.Split(' ');
        var at = Array.IndexOf(words, "leaf");
        var feet = int.Parse(words[at - 3], CultureInfo.InvariantCulture);
        var leaf = Length.Zero;
        for (var i = at + 1; i < words.Length; i += 2)
            leaf += words[i + 1] == "ft" ? Length.FromFeet(int.Parse(words[i], CultureInfo.InvariantCulture)) : Length.FromInches(1.0 / 16);
        var row = Some.Catalog.FindGatePost(Length.FromFeet(feet), leaf);
        var found = item.StartsWith("gate hole", StringComparison.Ordinal) ? row?.HoleDiameter.Inches : row?.OutsideDiameter.Inches;
        Assert.True(FirstLightTests.Agrees(expected, found?.ToString("0.####", CultureInfo.InvariantCulture) ?? "none"), $"{item}: {expected}, found {found}");
    }

    [Theory]
    [InlineData(48)]
    [InlineData(60)]
    [InlineData(72)]
    [InlineData(84)]
    [InlineData(96)]
    public void BandsKeepTheLimit(int inches)
    {
        var spec = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 50)]), Some.Spec(inches / 12.0))).Specs.Single();
        Agrees("C3", $"bands by limit for {inches} in", spec.Bands.Count);
        Agrees("C3", $"post ties by limit for {inches} in", spec.Ties.Count);
        Assert.True(FirstLightTests.Agrees(Row("C3", $"band positions by limit for {inches} in"), Numbers(spec.Bands.Diamonds)));
        Agrees("C3", $"largest band space by limit for {inches} in", spec.Bands.LargestSpace * inches / spec.Diamonds);
    }

    /// <summary>Common practice, no source: rows 4 and 5 of trade_practice.md at 84 in, the same habit at other heights.</summary>
    [Theory]
    [InlineData(48)]
    [InlineData(60)]
    [InlineData(72)]
    [InlineData(84)]
    public void TheHabitIsShownBesideTheLimitAndMarked(int inches)
    {
        var spec = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 50)]), Some.Spec(inches / 12.0))).Specs.Single();
        Agrees("C3", $"bands by habit for {inches} in", spec.Habit!.Count);
        Assert.True(FirstLightTests.Agrees(Row("C3", $"band positions by habit for {inches} in"), Numbers(spec.Habit.Diamonds)));
        Agrees("C3", $"last band space by habit for {inches} in", spec.Habit.LargestSpace);
        Assert.Equal(Row("C3", $"last band space by habit against 15 in for {inches} in") == "over", spec.HabitOverLimit);
    }

    /// <summary>The inches count alone, as check_jobs.md job 11 counts; the plan takes the larger count by diamonds.</summary>
    [Fact]
    public void BandsByInchesAlone()
        => Agrees("C3", "bands by inches alone for 96 in", Fastening.ByInches(new Plain(Length.FromInches(94).Metres), Some.Rules, Some.Rules.BandMax).Value);

    /// <summary>Row 9 of trade_practice.md, common practice, no source: nine diamonds; the limit gives eight at 1.40.</summary>
    [Fact]
    public void NineDiamondsBetweenRingsAreOverTheLimit()
    {
        var spec = Resolved(72, calibrated: true);
        Agrees("C3", "rings by limit at 1.40", new Length(MeshFormulas.TieSpace<Plain>(spec, spec.Rules.RingMax).Value).Inches);
        Agrees("C3", "rings by habit at 1.40", 9 * 2 * new Length(MeshFormulas.AdvanceLow<Plain>(spec).Value).Inches);
        Assert.True(9 * 2 * MeshFormulas.AdvanceLow<Plain>(spec).Value > spec.Rules.RingMax.Value);
    }

    /// <summary>Row 10 of trade_practice.md, common practice, no source, counted in check_jobs.md job 4.</summary>
    [Fact]
    public void TheThirdPicketIsReachedByCrossingAtEightAndSixteen()
    {
        var columns = (int)Bias.Columns(new Plain(Length.FromInches(4.2).Metres), new Plain(Length.FromInches(1.4).Metres)).Value;
        Agrees("C3", "bias 84 in columns", columns);
        Agrees("C3", "bias 84 in whole diamonds", MeshFormulas.WholeRows<Plain>(Resolved(84)).Value);
        Assert.Equal(Row("C3", "bias 84 in crossings"), Numbers(Bias.Crossings(columns, 24)));
    }

    [Theory]
    [InlineData(72)]
    [InlineData(84)]
    public void MeshRange(int inches)
    {
        Agrees("C4", $"advance lower end {inches} in 2 in 9 ga", new Length(MeshFormulas.AdvanceLow<Plain>(Resolved(inches)).Value).Inches);
        Agrees("C4", $"advance upper end {inches} in 2 in 9 ga", new Length(MeshFormulas.AdvanceHigh<Plain>(Resolved(inches)).Value).Inches);
    }

    [Fact]
    public void PicketsAreARangeUntilARollIsCalibrated()
    {
        var plan = Some.Plan(Some.StraightHundred(calibrated: false));
        Agrees("A", "run 1 pickets not calibrated fewest", plan.Lines[0].Runs[0].PicketsLow);
        Agrees("A", "run 1 pickets not calibrated most", plan.Lines[0].Runs[0].PicketsHigh);
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.RollUncalibrated);
    }

    /// <summary>Published weights per foot: ASA schedule table, ASTM A53 table, 35 Ill. Adm. Code 604 (pipe_sections.csv).</summary>
    [Theory]
    [InlineData("1.315-sch40", 1.68)]
    [InlineData("1.660-sch40", 2.27)]
    [InlineData("1.900-sch40", 2.72)]
    [InlineData("2.375-sch40", 3.65)]
    [InlineData("2.875-sch40", 5.79)]
    [InlineData("3.500-sch40", 7.58)]
    [InlineData("4.000-sch40", 9.11)]
    [InlineData("6.625-sch40", 18.97)]
    [InlineData("8.625-sch40", 28.55)]
    public void PublishedPipeWeightAgreesWithItsWall(string id, double poundsPerFoot)
    {
        var section = Some.Catalog.FindSection(id)!;
        Assert.Equal(poundsPerFoot, section.Weight.PoundsPerFoot, 9);
        // Steel of 0.2836 lb per cubic inch, the density the published tables rest on: within 0.3 % of the ring's volume.
        var (od, wall) = (section.OutsideDiameter.Inches, section.Wall.Inches);
        Assert.InRange(Math.PI * (od - wall) * wall * 12 * 0.2836 / poundsPerFoot, 0.997, 1.003);
    }

    private static string Numbers(IEnumerable<double> numbers)
        => string.Join(' ', numbers.Select(n => n.ToString("0.##", CultureInfo.InvariantCulture)));
}
