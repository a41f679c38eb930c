namespace Tautline.Formats.Sites.Dxf;

/// <summary>Ellipses and splines in chords within a tolerance.</summary>
internal static class DxfCurves
{
    private const int Deepest = 12; // halvings of a span
    private const int MostPoints = 200_000;
    private const int HighestDegree = 25;

    /// <summary>
    /// An ellipse or a part of one: centre + cos t major + sin t minor. Null where the numbers make none.
    /// </summary>
    /// <param name="centre">Of the ellipse.</param>
    /// <param name="major">From the centre to the end of the long half axis.</param>
    /// <param name="minor">From the centre to the end of the short one.</param>
    /// <param name="from">Parameter of the start, radians.</param>
    /// <param name="to">Parameter of the end, radians; above that of the start.</param>
    /// <param name="tolerance">Furthest that a chord may leave the curve.</param>
    public static List<SiteVertex>? Ellipse(
        (double X, double Y, double Z) centre, (double X, double Y, double Z) major, (double X, double Y, double Z) minor, double from, double to, double tolerance)
    {
        var longest = Math.Sqrt(major.X * major.X + major.Y * major.Y + major.Z * major.Z);
        var sweep = to - from;
        if (!(longest > 0) || !double.IsFinite(longest) || !(sweep > 0) || !(sweep < 100)) return null;
        // Nowhere does an ellipse leave a chord by more than a circle of its long half axis does for the same step of the parameter.
        var pieces = Math.Max(4, SiteGeometry.Pieces(longest, sweep, tolerance));
        List<SiteVertex> points = [];
        for (var i = 0; i <= pieces; i++)
        {
            var (sin, cos) = Math.SinCos(from + sweep * i / pieces);
            points.Add(new(centre.X + cos * major.X + sin * minor.X, centre.Y + cos * major.Y + sin * minor.Y, centre.Z + cos * major.Z + sin * minor.Z));
        }
        return points;
    }

    /// <summary>A spline by its control points, knots and weights (de Boor's algorithm, in homogeneous coordinates). Null where the numbers make none.</summary>
    public static List<SiteVertex>? Spline(int degree, List<double> knots, List<SiteVertex> controls, List<double> weights, double tolerance)
    {
        if (degree is < 1 or > HighestDegree || controls.Count <= degree || knots.Count != controls.Count + degree + 1) return null;
        if (weights.Count != 0 && (weights.Count != controls.Count || !weights.TrueForAll(w => w > 0 && double.IsFinite(w)))) return null;
        for (var i = 1; i < knots.Count; i++)
            if (!(knots[i] >= knots[i - 1])) return null;
        var curve = new Curve(degree, knots, controls, weights);
        List<SiteVertex> points = [curve.At(knots[degree], degree)];
        for (var span = degree; span < controls.Count; span++)
        {
            if (!(knots[span + 1] > knots[span])) continue;
            // In halves at least: the middle of an S lies on its chord.
            var middle = (knots[span] + knots[span + 1]) / 2;
            Halve(curve, span, knots[span], middle, points, tolerance, 0);
            Halve(curve, span, middle, knots[span + 1], points, tolerance, 0);
            if (points.Count > MostPoints) return null;
        }
        return points;
    }

    private static void Halve(Curve curve, int span, double from, double to, List<SiteVertex> points, double tolerance, int depth)
    {
        var (start, end) = (points[^1], curve.At(to, span));
        var middle = (from + to) / 2;
        var deviation = Math.Max(
            FromChord(curve.At(middle, span), start, end),
            Math.Max(FromChord(curve.At((from + middle) / 2, span), start, end), FromChord(curve.At((middle + to) / 2, span), start, end)));
        if (depth >= Deepest || points.Count > MostPoints || !(deviation > tolerance))
        {
            points.Add(end);
            return;
        }
        Halve(curve, span, from, middle, points, tolerance, depth + 1);
        Halve(curve, span, middle, to, points, tolerance, depth + 1);
    }

    private static double FromChord(SiteVertex p, SiteVertex a, SiteVertex b)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var square = dx * dx + dy * dy;
        var t = square > 0 ? Math.Clamp(((p.X - a.X) * dx + (p.Y - a.Y) * dy) / square, 0, 1) : 0;
        var (x, y) = (p.X - a.X - t * dx, p.Y - a.Y - t * dy);
        return Math.Sqrt(x * x + y * y);
    }

    private sealed class Curve(int degree, List<double> knots, List<SiteVertex> controls, List<double> weights)
    {
        private readonly (double X, double Y, double Z, double W)[] _work = new (double, double, double, double)[degree + 1];

        public SiteVertex At(double u, int span)
        {
            for (var j = 0; j <= degree; j++)
            {
                var (c, w) = (controls[span - degree + j], weights.Count == 0 ? 1 : weights[span - degree + j]);
                _work[j] = (c.X * w, c.Y * w, c.Z * w, w);
            }
            for (var r = 1; r <= degree; r++)
                for (var j = degree; j >= r; j--)
                {
                    var (low, high) = (knots[span - degree + j], knots[span + 1 + j - r]);
                    var a = high > low ? (u - low) / (high - low) : 0;
                    var (p, q) = (_work[j - 1], _work[j]);
                    _work[j] = (p.X + a * (q.X - p.X), p.Y + a * (q.Y - p.Y), p.Z + a * (q.Z - p.Z), p.W + a * (q.W - p.W));
                }
            var (x, y, z, weight) = _work[degree];
            return new(x / weight, y / weight, z / weight);
        }
    }
}
