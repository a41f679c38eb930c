using Tautline.Engine.Reasons;
using Tautline.Engine.Strength.Posts;
using static Tautline.Engine.Tests.Strength.In;

namespace Tautline.Engine.Tests.Strength;

/// <summary>Worked examples of steel and beams in print, as gathered in worked_examples_beam_steel.csv.</summary>
public sealed class SteelExamples
{
    /// <summary>ST-01. AISC Design Examples v14.0/v15.0, F.9A and F.9B: Pipe 8 x-strong, A53 Gr. B.</summary>
    [Fact]
    public void AiscDesignExampleF9PipeFlexure()
    {
        var (fy, e) = (Of(35, Ksi), Of(29_000, Ksi));
        Near(58.0, SteelFormulas.CompactLimit(fy, e).Value, 0.05);
        var mn = SteelFormulas.PipeMoment(Of(18.5), fy, e, Of(24, Inch * Inch * Inch), Of(31.0, Inch * Inch * Inch)).Value / (1000 * Pound * Foot);
        Near(90.4, mn, 0.05);
        Near(81.4, mn * SteelFormulas.Flexural<Plain>(DesignMethod.Lrfd).Value, 0.05);
        Near(54.1, mn * SteelFormulas.Flexural<Plain>(DesignMethod.Asd).Value, 0.05);
    }

    /// <summary>ST-02. The same example: required moments w l^2 / 8 of a simple span, here two cantilevers' reactions of a beam without overhang.</summary>
    [Fact]
    public void AiscDesignExampleF9RequiredMoments()
    {
        static double Middle(double load)
        {
            var (beside, _) = BeamFormulas.Overhang(Of(load), Of(16), Of(0));
            return beside.Value * 8 - BeamFormulas.StripMoment(Of(load), Of(0), Of(8)).Value;
        }
        Near(61.4, Middle(1.2 * 0.32 + 1.6 * 0.96), 0.05);
        Near(41.0, Middle(0.32 + 0.96), 0.05);
    }

    /// <summary>ST-03. AISC Manual Table 3-14, HSS20.000x0.500; with the tabulated Z, and with Z of the circle 612.3.</summary>
    [Fact]
    public void AiscManualTable314Hss20()
    {
        double Phi(double z) => 0.9 * SteelFormulas.PipeMoment(Of(20 / 0.465), Of(46, Ksi), Of(29_000, Ksi), Of(z), Of(z)).Value / (1000 * Pound * Foot);
        Near(611, Phi(177 * Inch * Inch * Inch), 0.6);
        Near(612.3, Phi(SectionFormulas.Plastic(Of(20, Inch), Of(0.465, Inch)).Value), 0.3);
    }

    /// <summary>ST-06. Bhavikatti, Mechanics of Solids, Example 10.2: pipe 60 x 8 mm as a beam of 2 m, 150 MPa under a load in its middle.</summary>
    [Fact]
    public void BhavikattiExample102()
    {
        var s = SectionFormulas.Elastic(SectionFormulas.SecondMoment(Of(0.060), Of(0.008)), Of(0.060)).Value;
        Near(4.52, 150e6 * s * 4 / 2 / 1000, 0.005);
    }

    /// <summary>ST-07. Gere, Mechanics of Materials, Example 5-6(a): solid round post, 12 kN at 2.5 m, 15 MPa: 273 mm.</summary>
    [Fact]
    public void GereExample56a()
    {
        double Stress(double d) => 12_000 * 2.5 / SectionFormulas.Elastic(SectionFormulas.SecondMoment(Of(d), Of(d / 2)), Of(d)).Value / 1e6;
        Assert.True(Stress(0.273 - 0.0006) > 15 && Stress(0.273 + 0.0006) < 15);
    }

    /// <summary>ST-09. Gere, Example 5-13: hollow pole of 4.0 in with 3.2 in inside, 1,500 lb.</summary>
    [Fact]
    public void GereExample513() => Near(658, SectionFormulas.RoundShear(Of(1500, Pound), Of(4, Inch), Of(0.4, Inch)).Value / Psi, 0.6);

    /// <summary>ST-10 and ST-11. 'Fence' structural stability calculation, published document 914315439: two pipes in metric.</summary>
    [Theory]
    [InlineData(76, 3.65, 830, 14321.5)]
    [InlineData(48, 3.0, 424, 4493.0)]
    public void FenceStabilityCalculationPipes(double outside, double wall, double area, double modulus)
    {
        Near(area, SectionFormulas.Area(Of(outside), Of(wall)).Value, 0.5);
        Near(modulus, SectionFormulas.Elastic(SectionFormulas.SecondMoment(Of(outside), Of(wall)), Of(outside)).Value, 0.1);
    }

    /// <summary>ST-20 to ST-25. AISC Manual Table 1-14 (from memory), on a design wall of 0.93 of the nominal one; within the tolerance the reference states.</summary>
    [Theory]
    [InlineData(1.66, 0.140, 0.625, 0.184, 0.222, 0.305)]
    [InlineData(1.90, 0.145, 0.749, 0.293, 0.309, 0.421)]
    [InlineData(2.375, 0.154, 1.02, 0.627, 0.528, 0.713)]
    [InlineData(3.5, 0.216, 2.07, 2.85, 1.63, 2.19)]
    [InlineData(4.0, 0.226, 2.50, 4.52, 2.26, 3.03)]
    public void AiscManualTable114StandardPipe(double outside, double nominal, double area, double second, double elastic, double plastic)
    {
        var (d, t) = (Of(outside), Of(0.93 * nominal));
        Near(area, SectionFormulas.Area(d, t).Value, 0.021);
        Near(second, SectionFormulas.SecondMoment(d, t).Value, 0.02);
        Near(elastic, SectionFormulas.Elastic(SectionFormulas.SecondMoment(d, t), d).Value, 0.008);
        Near(plastic, SectionFormulas.Plastic(d, t).Value, 0.011);
    }

    private static readonly Plain million = new(1e8);

    /// <summary>BM-01. Bansal, Strength of Materials, Problem 13.1: load at the tip.</summary>
    [Fact]
    public void BansalProblem131()
    {
        var ei = Of(210_000) * million;
        Near(10.71, BeamFormulas.PointTip(Of(25_000), Of(3000), Of(3000), ei).Value, 0.006);
        Near(0.005357, BeamFormulas.PointSlope(Of(25_000), Of(3000), ei).Value, 1e-6);
    }

    /// <summary>BM-02. Bansal, Problem 13.2: load away from the tip.</summary>
    [Fact]
    public void BansalProblem132()
    {
        var ei = Of(200_000) * million;
        Near(11.67, BeamFormulas.PointTip(Of(50_000), Of(2000), Of(3000), ei).Value, 0.006);
        Near(0.005, BeamFormulas.PointSlope(Of(50_000), Of(2000), ei).Value, 1e-6);
    }

    /// <summary>BM-03. Bansal, Problem 13.3: uniform load over all.</summary>
    [Fact]
    public void BansalProblem133()
        => Near(5.036, BeamFormulas.LowerTip(Of(16.4), Of(2500), Of(2500), Of(200_000 * 7.95e7)).Value, 0.0006);

    /// <summary>BM-05. Bansal, Problem 13.5: uniform load next to the fixed end; its slope is printed cut off.</summary>
    [Fact]
    public void BansalProblem135()
    {
        var ei = Of(200_000) * million;
        Near(1.67, BeamFormulas.LowerTip(Of(10), Of(2000), Of(3000), ei).Value, 0.006);
        Near(0.00066, BeamFormulas.LowerSlope(Of(10), Of(2000), ei).Value, 1e-5);
    }

    /// <summary>BM-08. Levinson, Statics and Strength of Materials, Example 13.2: 84.8 lb/ft moves the tip by an inch.</summary>
    [Fact]
    public void LevinsonExample132()
        => Near(1.0, BeamFormulas.StripTip(Of(84.8 / 12), Of(0), Of(96), Of(96), Of(1.5e6 * 50)).Value, 0.05 / 84.8);

    /// <summary>BM-10. Sarkar, Strength of Materials, Problem 6.14: equal loads at the middle and the tip; prints 0.03 where it computes 0.03125.</summary>
    [Fact]
    public void SarkarProblem614()
    {
        var ei = Of(200e9 * 2e-4);
        Near(0.22, BeamFormulas.PointTip(Of(20_000), Of(5), Of(10), ei).Value + BeamFormulas.PointTip(Of(20_000), Of(10), Of(10), ei).Value, 0.005);
        Near(0.03, BeamFormulas.PointSlope(Of(20_000), Of(5), ei).Value + BeamFormulas.PointSlope(Of(20_000), Of(10), ei).Value, 0.005);
    }

    /// <summary>BM-11. Levinson, Example 12.5: overhanging beam, the pattern of a cantilever gate; its stress is that of a closed tube 6 x 8 with a 1-in wall.</summary>
    [Fact]
    public void LevinsonExample125()
    {
        var (beside, far) = BeamFormulas.Overhang(Of(600), Of(8), Of(4));
        Near(5400, beside.Value, 1e-6);
        Near(1800, far.Value, 1e-6);
        Near(245, SectionFormulas.TubeShear(Of(3000), Of(6), Of(8), Of(1)).Value, 0.6);
    }
}
