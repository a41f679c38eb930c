using Tautline.Engine.Reasons;
using Tautline.Engine.Strength.Wind;
using static Tautline.Engine.Tests.Strength.In;

namespace Tautline.Engine.Tests.Strength;

/// <summary>Worked wind examples in print, as gathered in worked_examples_wind.csv; expected values are the printed ones, tolerances the printed digit.</summary>
public sealed class WindExamples
{
    private static Plain One => new(1);

    private static Plain Pressure(double speed, double kz, double kd, AsceEdition edition, AscePrinting printing = AscePrinting.Customary, double ke = 1, double importance = 1)
        => AsceWind.Pressure(Of(speed), new PressureFactors<Plain>(Of(kz), One, Of(kd), Of(ke), Of(importance)), edition, printing);

    /// <summary>WD-01. Sign lateral-load calculation sheet, ASCE 7-10 sec. 29.4, job 2015-041 (2015).</summary>
    [Fact]
    public void SignSheet2015Asce710ExposureD()
    {
        var kz = AsceWind.Kz(AsceEdition.Asce710, Exposure.D, Of(20, Foot)).Value;
        Near(1.083, kz, 0.0006);
        var q = Pressure(155 * Mph, kz, 0.85, AsceEdition.Asce710).Value;
        Near(56.62, q / Psf, 0.01);
        var force = q * AsceWind.Gust<Plain>().Value * 1.8 * (7.48 * Foot * Foot);
        Near(648, force / Pound, 0.6);
        Near(389, 0.6 * force / Pound, 0.6);
    }

    /// <summary>WD-02. 'Wind Analysis for Freestanding Wall and Sign Based on ASCE 7-05', published calculation sheet: all three cases.</summary>
    [Fact]
    public void FreestandingSignSheetAsce705()
    {
        // The sheet reads 1.01 from the table between 30 and 40 ft; the formula would give 1.0147 and q 17.88.
        var kz = AsceWind.KzByTable(Exposure.C, Of(35, Foot))!.Value.Value;
        Near(1.01, kz, 1e-9);
        Near(1.0147, AsceWind.Kz(AsceEdition.Asce705, Exposure.C, Of(35, Foot)).Value, 0.00005);
        var q = Pressure(90 * Mph, kz, 0.85, AsceEdition.Asce705).Value / Psf;
        Near(17.8, q, 0.01);
        var (bs, sh) = (Of(100.0 / 8), Of(8.0 / 35));
        var cf = WallCoefficients.Whole(bs, sh).Value;
        Near(1.848, cf, 0.0006);
        var force = q * 0.85 * cf * 800 / 1000;
        Near(22.37, force, 0.01);
        Near(693.57, force * (35 - 4), 0.3);
        Near(447.46, 0.2 * 100 * force, 0.2);
        var local = WallCoefficients.Local(bs, sh, 0, Of(2.0 / 8)).Value;
        Near(3.96 * 0.917, local, 0.005);
        Near(55, q * 0.85 * local, 0.5);
    }

    /// <summary>WD-05. City of Rexburg, Idaho, structural calculations A19-121 (2019): Kz 0.70 is the floor of the low-rise table, not for fences.</summary>
    [Fact]
    public void RexburgCalculations2019() => Near(20.1, Pressure(115 * Mph, 0.7, 0.85, AsceEdition.Asce710).Value / Psf, 0.05);

    /// <summary>WD-06. Chain-link intermediate-post calculation, published document 685822319, ASCE 7-05 factors in metric; its author left Kd out.</summary>
    [Fact]
    public void ChainLinkIntermediatePostMetric()
    {
        var q = Pressure(44.4, 0.57, 1, AsceEdition.Asce705, AscePrinting.Metric, importance: 0.87).Value;
        Near(599, q, 0.5);
        // 40 wires a metre of 4.75 mm, both families counted whole: 0.19, which the author rounds up to 0.20; counted once at crossings 0.1810.
        Near(0.1810, Solidity.OfCentres(Of(4.75e-3), Of(0.05)).Value, 0.00005);
        var w = 600 * 1.2 * (0.2 * 2.0 + 0.048) / 1000; // q rounded to 0.6 kN/m2 as the author does
        Near(0.32, w, 0.005);
        Near(0.64, Engine.Strength.Posts.BeamFormulas.StripMoment(Of(0.32), Of(0), Of(2.0)).Value, 0.01);
        Near(0.64, 0.32 * 2.0, 0.01);
    }

    /// <summary>WD-08. General finite-element library's ASCE 7-16 wind test, from a published building example.</summary>
    [Fact]
    public void FiniteElementLibraryAsce716()
    {
        var ke = AsceWind.Ke(Of(110), AscePrinting.Metric).Value;
        Near(0.987, ke, 1e-5);
        var kz = AsceWind.Kz(AsceEdition.Asce716, Exposure.C, Of(5), AscePrinting.Metric).Value;
        Near(0.86503, kz, 1e-5);
        Near(1202.91, Pressure(52, kz, 0.85, AsceEdition.Asce716, AscePrinting.Metric, ke).Value, 0.01);
    }

    /// <summary>WD-09. The same library's ASCE 7-22 test; it keeps Kd in the pressure, which the edition itself has in the force.</summary>
    [Fact]
    public void FiniteElementLibraryAsce722()
    {
        var kz = AsceWind.Kz(AsceEdition.Asce722, Exposure.C, Of(6.5), AscePrinting.Metric).Value;
        Near(0.91447, kz, 1e-5);
        var ke = AsceWind.Ke(Of(110), AscePrinting.Metric).Value;
        Near(1271.66, Pressure(52, kz, 0.85, AsceEdition.Asce722, AscePrinting.Metric, ke).Value, 0.01);
        Assert.False(AsceWind.DirectionInPressure(AsceEdition.Asce722));
        Assert.True(AsceWind.DirectionInPressure(AsceEdition.Asce716));
    }

    /// <summary>WD-12. The same library's EN 1991-1-4 test, checked by its authors against a published example of sec. 7.4.1: zones A to D.</summary>
    [Fact]
    public void FiniteElementLibraryEurocodeWall()
    {
        var speed = EurocodeWind.Probability(Of(5)).Value * 26;
        var peak = EurocodeWind.Peak(Terrain.Suburb, Of(10), Of(speed), One, Of(1.25)).Value;
        double[] cp = [2.9, 1.8, 1.4, 1.2];
        double[] w = [1530, 949, 738, 633];
        double[] tolerance = [1.5, 1.0, 1.0, 1.0];
        for (var zone = 0; zone < 4; zone++)
        {
            var found = EurocodeWind.Wall(zone, Of(10.0 / 2), false, One).Value;
            Near(cp[zone], found, 1e-6);
            Near(w[zone], found * peak, tolerance[zone]);
        }
        Assert.Equal([0, 1, 2, 3], new[] { 0.3, 2, 4, 4.01 }.Select(EurocodeWind.Zone));
    }

    /// <summary>WD-13. Web tutorial on ASCE 7-05, exposure C, Kz 0.90: arithmetic only.</summary>
    [Fact]
    public void WebTutorialAsce705() => Near(19.58, Pressure(100 * Mph, 0.90, 0.85, AsceEdition.Asce705).Value / Psf, 0.01);

    /// <summary>WD-14. City of Everett, Washington, permit archive, doc. 1852116 p. 79 (ASCE 7-16 Table 29.4-2).</summary>
    [Fact]
    public void EverettPermitArchiveLattice()
    {
        Near(1.8, LatticeCoefficients.Cf<Plain>(0.153, MemberForm.Flat).Value, 1e-9);
        Near(16, AsceWind.Least<Plain>().Value / Psf, 1e-9);
    }

    /// <summary>Exposure coefficients of the 2010 and 2016 editions (0.57, 0.70 and 0.98 seen, the others from memory): the formula agrees to the stated 0.006 to 0.007.</summary>
    [Theory]
    [InlineData(Exposure.B, 15, 0.57)]
    [InlineData(Exposure.B, 20, 0.62)]
    [InlineData(Exposure.B, 30, 0.70)]
    [InlineData(Exposure.B, 60, 0.85)]
    [InlineData(Exposure.C, 15, 0.85)]
    [InlineData(Exposure.C, 30, 0.98)]
    [InlineData(Exposure.C, 60, 1.13)]
    [InlineData(Exposure.D, 15, 1.03)]
    [InlineData(Exposure.D, 30, 1.16)]
    [InlineData(Exposure.D, 60, 1.31)]
    public void PrintedExposureCoefficients(Exposure exposure, double feet, double printed)
    {
        Near(printed, AsceWind.Kz(AsceEdition.Asce716, exposure, Of(feet, Foot)).Value, 0.007);
        Near(printed, AsceWind.KzByTable(exposure, Of(feet, Foot))!.Value.Value, 1e-12);
    }

    /// <summary>Exposure B of the 2022 edition: alpha 7.5 gives the table's 0.57 at 15 ft; a public library that has 7.0 there gives 0.517.</summary>
    [Fact]
    public void ExposureBOf2022() => Near(0.573, AsceWind.Kz(AsceEdition.Asce722, Exposure.B, Of(15, Foot)).Value, 0.0006);

    /// <summary>Printed K1 of exposure C, ASCE 7-16 26.8: ridge, escarpment, hill by H/Lh, to the printed hundredth (a k that ends in 5 may round either way).</summary>
    [Theory]
    [InlineData(HillShape.Ridge, 0.20, 0.29)]
    [InlineData(HillShape.Ridge, 0.30, 0.43)]
    [InlineData(HillShape.Ridge, 0.40, 0.58)]
    [InlineData(HillShape.Ridge, 0.50, 0.72)]
    [InlineData(HillShape.Escarpment, 0.20, 0.17)]
    [InlineData(HillShape.Escarpment, 0.25, 0.21)]
    [InlineData(HillShape.Escarpment, 0.40, 0.34)]
    [InlineData(HillShape.Escarpment, 0.50, 0.43)]
    [InlineData(HillShape.Hill, 0.20, 0.21)]
    [InlineData(HillShape.Hill, 0.35, 0.37)]
    [InlineData(HillShape.Hill, 0.50, 0.53)]
    public void PrintedTopographicK1(HillShape shape, double ratio, double printed)
        => Near(printed, Topography.K1<Plain>(new Hill(shape, 30 * ratio, 30, 0, false), Exposure.C).Value, 0.00501);

    /// <summary>ASCE 7-16 Table 29.4-2 and the steps between its rows.</summary>
    [Fact]
    public void LatticeTable()
    {
        Assert.Equal([1.2, 1.3, 1.5], new[] { 0.09, 0.29, 0.7 }.Select(e => LatticeCoefficients.Cf<Plain>(e, MemberForm.Round).Value));
        Assert.Equal([2.0, 1.8, 1.6], new[] { 0.09, 0.29, 0.7 }.Select(e => LatticeCoefficients.Cf<Plain>(e, MemberForm.Flat).Value));
        Assert.Equal([(0.1, 2.0, 1.8), (0.3, 1.8, 1.6)], LatticeCoefficients.Steps(MemberForm.Flat));
        Near(0.2, LatticeCoefficients.OnGross(Of(0.105), MemberForm.Flat).Value, 1e-12); // kept from the step at 0.1
        Near(0.54, LatticeCoefficients.OnGross(Of(0.32), MemberForm.Flat).Value, 1e-12);
        Near(0.64, LatticeCoefficients.OnGross(Of(0.4), MemberForm.Flat).Value, 1e-12);
    }
}
