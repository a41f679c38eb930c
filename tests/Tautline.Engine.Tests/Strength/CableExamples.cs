using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Strength.Gates;
using Tautline.Engine.Strength.Ties;
using static Tautline.Engine.Tests.Strength.In;

namespace Tautline.Engine.Tests.Strength;

/// <summary>Worked examples of wires, heat, gates and ties in print, as gathered in worked_examples_cable_gate_concrete.csv.</summary>
public sealed class CableExamples
{
    /// <summary>CB-01. Tayal, Engineering Mechanics, Example 10.4: end pull, angle and length of a parabola.</summary>
    [Fact]
    public void TayalExample104()
    {
        var (w, l, f) = (Of(0.5 * 9.81), Of(30), Of(0.5));
        var pull = CableFormulas.Pull(w, l, f);
        Near(1106.07, CableFormulas.AtSupport(pull, w, l).Value, 0.01);
        Near(3.814, Trig.AtanDegrees(w.Value * 15 / pull.Value), 0.001);
        Near(30.0222, CableFormulas.Length(l, f).Value, 0.0001);
    }

    /// <summary>CB-02. Tayal, Example 10.5: least sag for a limit of the pull.</summary>
    [Fact]
    public void TayalExample105() => Near(0.849141, CableFormulas.LeastSag(Of(3), Of(30), Of(400)).Value, 1e-5);

    /// <summary>CB-03. Tayal, Example 10.6: span of a catenary from its length and sag; c is 75 m.</summary>
    [Fact]
    public void TayalExample106()
    {
        var c = CableFormulas.Parameter(Of(100), Of(50));
        Near(75, c.Value, 1e-9);
        Near(164.7918, CableFormulas.CatenarySpan(c, Of(100)).Value, 0.001);
    }

    /// <summary>CB-05. Beer and Johnston, Vector Mechanics, Sample Problem 7.10: the book stops at a trial of c = 99 m; exact is 98.379.</summary>
    [Fact]
    public void BeerJohnstonSample710()
    {
        var c = CableFormulas.Parameter(150, 30);
        Near(98.379, c, 0.0006);
        Near(4455, 45 * c, 45);
        Near(5805, 45 * (c + 30), 45);
        // s = c sinh(l / 2c): the length whose span is the span.
        Near(150, CableFormulas.CatenarySpan(Of(c), Of(164.96 / 2)).Value, 0.01);
        Near(165, 164.96, 0.6);
    }

    /// <summary>CB-06. McLean and Nelson, Engineering Mechanics, Problem 7-11: sag from the pull at the end; computes 1.0013.</summary>
    [Fact]
    public void McLeanNelsonProblem711() => Near(1.0, CableFormulas.LeastSag(Of(0.625), Of(80), Of(500)).Value, 0.05);

    /// <summary>CB-09. Mehta and Mehta, Principles of Power System, Example 8.17.</summary>
    [Fact]
    public void MehtaExample817() => Near(3.7, CableFormulas.Sag(Of(0.68), Of(260), Of(1550)).Value, 0.02);

    /// <summary>CB-10. Mehta and Mehta, Example 8.18: sag under weight and wind, along its slant and upright.</summary>
    [Fact]
    public void MehtaExample818()
    {
        var load = CableFormulas.Resultant(Of(1.98), Of(1.5));
        var slant = CableFormulas.Sag(load, Of(150), Of(2000)).Value;
        Near(3.49, slant, 0.01);
        Near(2.78, slant * 1.98 / load.Value, 0.01);
    }

    /// <summary>CB-12. Mehta and Mehta, Example 8.20: ice and wind.</summary>
    [Fact]
    public void MehtaExample820()
    {
        var ice = Engine.Strength.Wind.Solidity.IceArea(Of(0.0127), Of(0.0196)).Value * 910; // kg a metre
        var load = CableFormulas.Resultant(Of(0.865 + ice), Of(39 * (0.0196 + 2 * 0.0127)));
        Near(6.3, CableFormulas.Sag(load, Of(275), Of(8060.0 / 2)).Value, 0.05);
    }

    /// <summary>CB-14. Mehta and Mehta, Example 8.23: supports 60 m apart in height; lowest point and middle.</summary>
    [Fact]
    public void MehtaExample823()
    {
        var (w, pull) = (Of(1.5), Of(1600));
        var x = CableFormulas.Lowest(Of(500), Of(60), pull, w);
        var fall = CableFormulas.Fall(w, x, pull).Value;
        Near(23, 30 - fall, 0.5);
        Near(30.7, 30 - fall + CableFormulas.Fall(w, Of(250 - x.Value), pull).Value, 0.05);
    }

    /// <summary>CB-16. Levinson, Example 9.2: a wire of 8 ft pulled aside by 5 in, the geometry of a test of tension wire.</summary>
    [Fact]
    public void LevinsonExample92() => Near(0.00541, CableFormulas.AsideStrain(Of(5), Of(96)).Value, 5e-6);

    /// <summary>TH-01. Pytel and Kiusalaas, Mechanics of Materials, Sample Problem 2.10: a rod between walls that cools by 40 degrees.</summary>
    [Fact]
    public void PytelKiusalaasSample210()
    {
        double Stress(double give) => BraceFormulas.ColdStress(Of(200e9), Of(11.7e-6), Of(40), Of(give), Of(2.5)).Value / 1e6;
        Near(93.6, Stress(0), 0.05);
        Near(53.6, Stress(0.0005), 0.05);
    }

    /// <summary>TH-03. The same, Sample Problem 2.12: steel bars shortened by 6,000 lb and heat, and a longer bronze bar, at one height.</summary>
    [Fact]
    public void PytelKiusalaasSample212()
    {
        double Apart(double degrees) => BraceFormulas.Shortening(Of(10.0e-6), Of(36), Of(degrees)).Value
                                        - BraceFormulas.Shortening(Of(6.5e-6), Of(24), Of(degrees)).Value - 6000 * 24 / (29e6 * 0.75);
        Assert.True(Apart(32.5 - 0.05) < 0 && Apart(32.5 + 0.05) > 0);
    }

    /// <summary>GT-01. Beiser, Schaum's Applied Physics, gate problem (question read, answers from memory, statics agrees).</summary>
    [Fact]
    public void BeiserGate()
    {
        var couple = LeafFormulas.Couple(Of(300), Of(0.9), Of(1.2));
        Near(225, couple.Value, 0.5);
        Near(375, LeafFormulas.Carrying(couple, Of(300)).Value, 0.5);
    }

    /// <summary>GT-03. Levinson, Example 4.5: pin below, bearing above, two loads.</summary>
    [Fact]
    public void LevinsonExample45()
    {
        var couple = LeafFormulas.Couple(Of(1500), Of((500 * 2 + 1000 * 8) / 1500.0), Of(6));
        Near(1500, couple.Value, 1e-6);
        Near(2121, LeafFormulas.Carrying(couple, Of(1500)).Value, 0.6);
    }

    /// <summary>GT-05. Levinson, Example 4.3: a weight on two ties at 30 and 45 degrees.</summary>
    [Fact]
    public void LevinsonExample43()
    {
        var (at30, at45) = BraceFormulas.Joint(Of(100), Of(Math.Sqrt(1.0 / 3)), Of(1));
        Near(73.2, at30.Value, 0.05);
        Near(89.7, at45.Value, 0.05);
    }

    /// <summary>GT-06. Tayal, Example 10.2: a wire with three loads and a known level pull.</summary>
    [Fact]
    public void TayalExample102()
    {
        ReadOnlySpan<Plain> loads = [Of(100), Of(150), Of(200)];
        var a = CableFormulas.HigherEnd(loads, Of(1), Of(200), Of(2)).Value;
        Near(300, a, 1e-6);
        Near(150, 450 - a, 1e-6);
        Near(360.555, CableFormulas.Along(Of(200), Of(a)).Value, 0.001);
        Near(282.843, CableFormulas.Along(Of(200), Of(a - 100)).Value, 0.001);
    }
}
