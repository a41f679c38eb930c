using System.Globalization;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>
/// The parts of a circular arc, wherever it lies: level lengths, angles in degrees. It is fixed by any two of its parts that
/// stand together in a 'From' below. Delta, the angle at the centre, is within (0, 360); from 180 on the tangents do not
/// meet ahead, and tangent and external are null. Sources of the formulas: docs/calculation.md, section 14.
/// </summary>
public sealed record Curve
{
    private const double RadiansPerDegree = Math.PI / 180;

    private Curve(double radius, double delta) => (Radius, DeltaDegrees) = (new Length(radius), delta);

    public Length Radius { get; }

    public double DeltaDegrees { get; }

    public Length ArcLength => Radius * (DeltaDegrees * RadiansPerDegree);

    /// <summary>Straight from end to end.</summary>
    public Length Chord => Length.Min(2 * Radius * Sin(DeltaDegrees / 2), ArcLength);

    /// <summary>From the middle of the chord to the middle of the arc.</summary>
    public Length MiddleOrdinate
    {
        get
        {
            // 2 sin^2(delta/4) is 1 - cos(delta/2) without its loss of digits on flat curves.
            var sin = Sin(DeltaDegrees / 4);
            return 2 * Radius * (sin * sin);
        }
    }

    /// <summary>From an end of the arc to where the tangents meet.</summary>
    public Length? Tangent => DeltaDegrees < 180 ? Radius * Trig.TanDegrees(DeltaDegrees / 2) : null;

    /// <summary>From the middle of the arc to where the tangents meet.</summary>
    public Length? External => Tangent is { } tangent ? tangent * Bulge : null;

    /// <summary>tan(delta/4), the middle ordinate over half the chord, as drawings keep it; here always positive.</summary>
    public double Bulge => Trig.TanDegrees(DeltaDegrees / 4);

    public static Surveyed<Curve> FromRadiusAndDelta(Length radius, double deltaDegrees)
        => Solve(Part("radius", radius), Delta(deltaDegrees), static (r, d) => (r, d));

    public static Surveyed<Curve> FromRadiusAndTangent(Length radius, Length tangent)
        => Solve(Part("radius", radius), Part("tangent", tangent), static (r, t) => (r, 2 * Trig.Atan2Degrees(t, r)));

    /// <summary>The shorter of the two arcs over the chord.</summary>
    public static Surveyed<Curve> FromRadiusAndChord(Length radius, Length chord)
        => Solve(Part("radius", radius), Part("chord", chord), static (r, c) => (r, 2 * Trig.AsinDegrees(c / (2 * r))));

    public static Surveyed<Curve> FromRadiusAndArcLength(Length radius, Length arc)
        => Solve(Part("radius", radius), Part("arc length", arc), static (r, l) => (r, l / r / RadiansPerDegree));

    public static Surveyed<Curve> FromRadiusAndMiddleOrdinate(Length radius, Length ordinate) => Solve(
        Part("radius", radius), Part("middle ordinate", ordinate), static (r, m) => (r, 4 * Trig.AsinDegrees(Math.Sqrt(m / (2 * r)))));

    public static Surveyed<Curve> FromRadiusAndExternal(Length radius, Length external) => Solve(
        Part("radius", radius), Part("external", external), static (r, e) => (r, 2 * Trig.Atan2Degrees(Math.Sqrt(e * (2 * r + e)), r)));

    public static Surveyed<Curve> FromDeltaAndTangent(double deltaDegrees, Length tangent)
        => Solve(Delta(deltaDegrees), Part("tangent", tangent), static (d, t) => (t / Trig.TanDegrees(d / 2), d));

    public static Surveyed<Curve> FromDeltaAndChord(double deltaDegrees, Length chord)
        => Solve(Delta(deltaDegrees), Part("chord", chord), static (d, c) => (c / (2 * Sin(d / 2)), d));

    /// <summary>Also the degree of curve: with an arc of 100 ft, delta is the degree by the arc definition.</summary>
    public static Surveyed<Curve> FromDeltaAndArcLength(double deltaDegrees, Length arc)
        => Solve(Delta(deltaDegrees), Part("arc length", arc), static (d, l) => (l / (d * RadiansPerDegree), d));

    public static Surveyed<Curve> FromDeltaAndMiddleOrdinate(double deltaDegrees, Length ordinate)
        => Solve(Delta(deltaDegrees), Part("middle ordinate", ordinate), static (d, m) => (m / (2 * Sin(d / 4) * Sin(d / 4)), d));

    public static Surveyed<Curve> FromDeltaAndExternal(double deltaDegrees, Length external) => Solve(
        Delta(deltaDegrees), Part("external", external), static (d, e) => (e / (Trig.TanDegrees(d / 2) * Trig.TanDegrees(d / 4)), d));

    /// <summary>What a string line and a rule give on a kerb that is there already.</summary>
    public static Surveyed<Curve> FromChordAndMiddleOrdinate(Length chord, Length ordinate) => Solve(
        Part("chord", chord), Part("middle ordinate", ordinate),
        static (c, m) => ((c * c / 4 + m * m) / (2 * m), 4 * Trig.Atan2Degrees(2 * m, c)));

    public static Surveyed<Curve> FromTangentAndExternal(Length tangent, Length external) => Solve(
        Part("tangent", tangent), Part("external", external),
        static (t, e) => ((t - e) * (t + e) / (2 * e), 4 * Trig.Atan2Degrees(e, t)));

    public static Surveyed<Curve> FromTangentAndChord(Length tangent, Length chord) => Solve(
        Part("tangent", tangent), Part("chord", chord), static (t, c) =>
        {
            var twiceRise = Math.Sqrt((2 * t - c) * (2 * t + c));
            return (t * c / twiceRise, 2 * Trig.Atan2Degrees(twiceRise, c));
        });

    /// <param name="chord">Above zero.</param>
    /// <param name="bulge">tan(delta/4), the sign taken off: it tells only the side.</param>
    public static Surveyed<Curve> FromChordAndBulge(Length chord, double bulge) => Solve(
        Part("chord", chord), new("bulge", bulge, bulge, bulge > 0 && double.IsFinite(bulge)),
        static (c, b) => (c * (1 + b * b) / (4 * b), 4 * Trig.AtanDegrees(b)));

    /// <summary>The chord of a piece of the arc: never longer than the piece, not by a rounding either.</summary>
    public Length ChordOf(Length arc) => Length.Min(2 * Radius * Sin(DeflectionDegrees(arc)), arc);

    /// <summary>The piece of the arc over a chord, the shorter of the two; null where the chord is longer than the circle is wide.</summary>
    public Length? ArcOf(Length chord)
    {
        var half = Trig.AsinDegrees(chord / (2 * Radius));
        return double.IsNaN(half) ? null : Length.Max(2 * Radius * (half * RadiansPerDegree), chord);
    }

    /// <summary>The angle from the tangent at an end to a point of the arc: half the angle at the centre.</summary>
    /// <param name="arc">From that end, along the arc.</param>
    public double DeflectionDegrees(Length arc) => arc / Radius / 2 / RadiansPerDegree;

    /// <summary>From the chord square out to the arc; null past the ends, and for arcs of more than half a circle.</summary>
    /// <param name="fromMiddle">Along the chord from its middle, to either side.</param>
    public Length? OrdinateAt(Length fromMiddle)
    {
        var (r, half, x) = (Radius.Metres, Chord.Metres / 2, fromMiddle.Metres);
        if (!(Math.Abs(x) <= half) || DeltaDegrees > 180) return null;
        // sqrt(r^2 - x^2) - r cos(delta/2), turned about so that flat curves lose no digits.
        return new Length((half - x) * (half + x) / (Math.Sqrt((r - x) * (r + x)) + r * Trig.SinCosDegrees(DeltaDegrees / 2).Cos));
    }

    private readonly record struct Given(string Name, double Value, Figure Shown, bool Fits);

    private static Given Part(string name, Length length)
    {
        var known = Survey.IsMeasure(length.Metres);
        return new(name, length.Metres, known ? length : "no finite length", known && length > Length.Zero);
    }

    private static Given Delta(double degrees)
        => new("delta", degrees, string.Create(CultureInfo.InvariantCulture, $"{degrees:0.####}°"), degrees is > 0 and < 360);

    private static Surveyed<Curve> Solve(Given a, Given b, Func<double, double, (double Radius, double Delta)> solve)
    {
        var problems = new ProblemList();
        foreach (var part in (ReadOnlySpan<Given>)[a, b])
            if (!part.Fits) problems.Add(ProblemCode.CurvePart, new Place(part.Name), part.Name, part.Shown);
        if (problems.HasErrors) return new(null, problems.Found);
        var (radius, delta) = solve(a.Value, b.Value);
        return radius > 0 && Survey.IsMeasure(radius) && delta is > 0 and < 360
            ? new(new Curve(radius, delta), [])
            : Survey.Fail<Curve>(ProblemCode.CurveImpossible, b.Name, a.Name, a.Shown, b.Name, b.Shown);
    }

    private static double Sin(double degrees) => Trig.SinCosDegrees(degrees).Sin;
}
