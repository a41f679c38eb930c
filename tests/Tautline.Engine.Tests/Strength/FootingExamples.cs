using Tautline.Engine.Reasons;
using Tautline.Engine.Strength.Footings;
using static Tautline.Engine.Tests.Strength.In;

namespace Tautline.Engine.Tests.Strength;

/// <summary>Worked examples of footings and concrete in print, as gathered in worked_examples_footing.csv and worked_examples_cable_gate_concrete.csv.</summary>
public sealed class FootingExamples
{
    private const double PsfPerFoot = Psf / Foot;

    private static double Converged(double pounds, double feet, double breadth, double soil)
        => PoleFormulas.Converged(pounds * Pound, pounds * Pound * feet * Foot, soil * PsfPerFoot, breadth * Foot) / Foot;

    /// <summary>FT-01. Christy, Engineering with the Spreadsheet, ASCE Press 2006, fig. 16-1: constrained at the ground.</summary>
    [Fact]
    public void ChristyFigure161Constrained()
        => Near(3.19, PoleFormulas.ConstrainedDepth(Of(510 * 4, Pound * Foot), Of(266, PsfPerFoot), Of(1, Foot)).Value / Foot, 0.01);

    /// <summary>FT-02. The same figure, nonconstrained, converged.</summary>
    [Fact]
    public void ChristyFigure161Nonconstrained()
    {
        var depth = Converged(510, 4, 1, 266);
        Near(5.02, depth, 0.01);
        Near(445, PoleFormulas.Pressure(Of(266, PsfPerFoot), Of(depth / 3, Foot)).Value / Psf, 0.5);
    }

    /// <summary>FT-03. 'Flagpole Footing' worksheet, IBC 2018 1807.3, published calculation document (2022): twice the soil value for an isolated pole.</summary>
    [Fact]
    public void FlagpoleFootingWorksheet()
    {
        var (soil, breadth) = (Of(2 * 350, PsfPerFoot), Of(4.5, Foot));
        var moment = Of(30_000 * 3, Pound * Foot);
        Near(90_000, moment.Value / (Pound * Foot), 1e-6);
        var depth = PoleFormulas.ConstrainedDepth(moment, soil, breadth);
        Near(1.509, depth.Value, 0.0006);
        var s1 = PoleFormulas.Pressure(soil, depth / Of(3));
        Near(55.32, s1.Value / 1000, 0.02);
        Near(166.0, PoleFormulas.Pressure(soil, depth).Value / 1000, 0.06);
        Near(13.501, PoleFormulas.A(Of(30_000, Pound), s1, breadth).Value / Foot, 0.001);
    }

    /// <summary>FT-04. City of Zephyrhills, Florida, permit archive, doc. 178567 p. 35: one pass at the depth provided; its unrounded height gives 3.97, 4.17 ft 3.979.</summary>
    [Fact]
    public void ZephyrhillsSignPage35()
    {
        var s1 = PoleFormulas.Pressure(Of(300, PsfPerFoot), Of(4.0 / 3, Foot));
        Near(400, s1.Value / Psf, 0.5);
        Near(1.9, PoleFormulas.A(Of(1746.3, Pound), s1, Of(5.5, Foot)).Value / Foot, 0.05);
        Near(3.97, PoleFormulas.Depth(Of(1746.3, Pound), Of(1746.3 * 4.17, Pound * Foot), s1, Of(5.5, Foot)).Value / Foot, 0.012);
        Near(7.3, 1746.3 * 4.17 / 1000, 0.05);
    }

    /// <summary>FT-05. The same archive, p. 30: one pass gives 1.53 ft where the converged depth is 1.88; both styles are in print.</summary>
    [Fact]
    public void ZephyrhillsSignPage30BothStyles()
    {
        var s1 = PoleFormulas.Pressure(Of(300, PsfPerFoot), Of(2.67 / 3, Foot));
        Near(267, s1.Value / Psf, 0.5);
        Near(0.5, PoleFormulas.A(Of(79.04, Pound), s1, Of(1.5, Foot)).Value / Foot, 0.05);
        Near(1.53, PoleFormulas.Depth(Of(79.04, Pound), Of(79.04 * 3.2, Pound * Foot), s1, Of(1.5, Foot)).Value / Foot, 0.012);
        Near(1.88, Converged(79.04, 3.2, 1.5, 300), 0.005);
    }

    /// <summary>FT-10. Engineering forum thread 'required embedment depth' (2006 IBC 1805.7.2.1): 'almost 6.5 ft'; a smoke check.</summary>
    [Fact]
    public void ForumEmbedmentDepth() => Near(6.45, Converged(480, 5, 1.5, 100), 0.1);

    /// <summary>FT-12. Zephyrhills, doc. 166215 p. 9: spread footing, the weight outside the middle third.</summary>
    [Fact]
    public void ZephyrhillsSpreadFooting()
    {
        var moment = 24.7 * (16 * 5.0 + 4.5 * 1.5);
        Near(2.1, moment / 1000, 0.05);
        var weight = 2.58 * 2.58 * 2.5 * 150;
        Near(2496, weight, 1);
        Near(2696, weight + 200, 1);
        var e = moment / 2696;
        Near(0.79, e, 0.01);
        // The sheet takes the eccentricity it prints.
        Near(1405, BaseFormulas.Toe(Of(2696), Of(0.794), Of(2.58), Of(2.58)).Value, 4);
        Near(3.5, 2696 * 2.58 / 2 / 1000, 0.05);
        Near(2.3, 2696 * 2.58 / 2 / 1.5 / 1000, 0.05);
    }

    /// <summary>CN-01 and CN-03. Zephyrhills: weights of footings at 150 lb a cubic foot.</summary>
    [Fact]
    public void ZephyrhillsFootingWeights()
    {
        Near(4241, BaseFormulas.Round(Of(3), Of(4)).Value * 150, 0.6);
        Near(28.27, BaseFormulas.Round(Of(3), Of(4)).Value, 0.005);
        Near(7689, 2.33 * 5.5 * 4 * 150, 0.6);
    }

    /// <summary>CN-04. Dry-mix trade data: bags of a cubic yard at 0.30, 0.45, 0.60 cu ft.</summary>
    [Theory]
    [InlineData(0.30, 90)]
    [InlineData(0.45, 60)]
    [InlineData(0.60, 45)]
    public void DryMixBagsOfAYard(double yield, int bags)
    {
        Assert.Equal(bags, Plain.Cover(Of(27), Of(yield)).Value);
        if (bags == 45) Near(0.60, Some.Rules.BagYield.Value / (Foot * Foot * Foot), 1e-9);
    }

    /// <summary>CN-06. Civil-engineering teaching table, per cent of the 28-day strength; the ACI 209 form differs and is shown beside.</summary>
    [Fact]
    public void StrengthWithAgeBothSources()
    {
        Assert.Equal([0.16, 0.40, 0.65, 0.90, 0.99], new[] { 1, 3, 7, 14, 28 }.Select(ConcreteAge.Taught));
        Assert.Equal([0, 0.40, 0.65], new[] { 0, 6, 13 }.Select(ConcreteAge.Taught));
        // t / (4 + 0.85 t) worked by hand at 7 and 28 days: 0.70 and 1.01.
        Near(0.70, ConcreteAge.Share(Of(7), false).Value, 0.005);
        Near(1.01, ConcreteAge.Share(Of(28), false).Value, 0.005);
    }

    /// <summary>IBC Table 1806.2 (2012): 1 psf for each foot is 0.157 kPa for each metre.</summary>
    [Fact]
    public void SoilTableInBothUnits()
    {
        Assert.Equal([1200, 400, 200, 150, 100], SoilClasses.All.Select(s => Math.Round(s.Lateral / PsfPerFoot, 6)));
        Assert.Equal([12000, 4000, 3000, 2000, 1500], SoilClasses.All.Select(s => Math.Round(s.Vertical / Psf, 6)));
        Near(15.7, SoilClasses.Find("clay")!.Lateral / 1000, 0.05);
        Assert.Null(SoilClasses.Find("mud"));
    }
}
