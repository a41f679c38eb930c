namespace Tautline.Formats.Sites.LandXml;

/// <summary>One element of a chain of geometry, with whatever the file gives of it. Places are east, north, height; directions unit vectors.</summary>
internal sealed class GeomItem(string kind, int line)
{
    public string Kind { get; } = kind;

    public int Line { get; } = line;

    public SiteVertex? Start { get; set; }

    public SiteVertex? End { get; set; }

    public SiteVertex? Centre { get; set; }

    /// <summary>Where the tangents meet.</summary>
    public SiteVertex? Meet { get; set; }

    public double Radius { get; init; } = double.NaN;

    /// <summary>Of a spiral: radius at the end; infinite where it ends straight.</summary>
    public double EndRadius { get; init; } = double.NaN;

    public double Length { get; init; } = double.NaN;

    /// <summary>1 turning left (ccw), -1 right (cw), 0 not told.</summary>
    public int Turn { get; init; }

    public (double X, double Y)? StartDirection { get; set; }

    public (double X, double Y)? EndDirection { get; set; }

    public double StartStation { get; init; } = double.NaN;

    public string SpiralKind { get; init; } = "";

    /// <summary>Places between start and end of an irregular line.</summary>
    public List<SiteVertex> Between { get; } = [];
}

/// <summary>A chain as a line, or why it is none.</summary>
/// <param name="Vertices">With real arcs; spirals in chords.</param>
/// <param name="Refused">Null where the line is whole.</param>
/// <param name="Notes">What is worth telling.</param>
internal sealed record Chained(List<SiteVertex> Vertices, string? Refused, List<string> Notes)
{
    public int Spirals { get; init; }
}

/// <summary>
/// Makes a line of a LandXML CoordGeom. What an element leaves out is taken from its neighbours: an arc given only by the meeting point of its tangents lies between
/// those of the neighbours. Where the first place cannot be known the chain is refused.
/// </summary>
internal sealed class ChainBuilder(List<GeomItem> items, double tolerance)
{
    private const double Near = 0.001; // file units; places this close are one place
    private const double Agree = 0.01; // file units; a radius or end may be this far from what the file says beside it

    private readonly List<string> _notes = [];
    private readonly List<SiteVertex> _line = [];
    private int _spirals;

    /// <param name="startStation">Name of the station at the start; NaN where none.</param>
    /// <param name="length">Length of the whole as the file says; NaN where it does not.</param>
    public Chained Build(double startStation, double length)
    {
        if (items.Count == 0) return new([], "it has no geometry", _notes);
        for (var i = 0; i < items.Count; i++) Locate(i);
        for (var i = 0; i < items.Count; i++)
            if (items[i].Start is null || items[i].End is null) return new([], SiteText($"its {items[i].Kind} in line {items[i].Line} has no start or end that can be known"), _notes);
        LeadIn(startStation);
        foreach (var item in items)
            if (Append(item) is { } refused) return new([], refused, _notes);
        LeadOut(length);
        if (_line.Count > 2 && SiteGeometry.Distance(_line[0], _line[^1]) is > 0 and < Near) _line[^1] = _line[0];
        return new(_line, null, _notes) { Spirals = _spirals };
    }

    private static string SiteText(FormattableString text) => text.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private void Locate(int i)
    {
        var item = items[i];
        if (item.Kind == "Curve" && item.Meet is not null && (item.Start is null || item.End is null) && item.Centre is null) FromTangents(i);
        item.Start ??= i > 0 ? items[i - 1].End : null;
        if (item.End is null && i + 1 < items.Count) item.End = items[i + 1].Start;
    }

    /// <summary>An arc by the meeting point of its tangents, its radius, and their directions.</summary>
    private void FromTangents(int i)
    {
        var (item, meet) = (items[i], items[i].Meet!.Value);
        var before = item.Start ?? (i > 0 ? items[i - 1].Meet ?? items[i - 1].End ?? items[i - 1].Start : null);
        var after = item.End ?? (i + 1 < items.Count ? items[i + 1].Meet ?? items[i + 1].Start ?? items[i + 1].End : null);
        var arriving = before is { } b ? Direction(b, meet) : item.StartDirection;
        var leaving = after is { } a ? Direction(meet, a) : item.EndDirection;
        if (arriving is not { } d1 || leaving is not { } d2) return;
        var (cross, dot) = (d1.X * d2.Y - d1.Y * d2.X, d1.X * d2.X + d1.Y * d2.Y);
        var angle = Math.Atan2(Math.Abs(cross), dot);
        var radius = double.IsNaN(item.Radius) && item.Length > 0 ? item.Length / angle : item.Radius;
        var tangent = radius * Math.Tan(angle / 2);
        if (!double.IsFinite(tangent) || !(radius > 0)) return;
        if (item.Turn != 0 && Math.Sign(cross) != item.Turn) _notes.Add(SiteText($"the curve in line {item.Line} turns the other way than it says"));
        item.Start ??= new(meet.X - tangent * d1.X, meet.Y - tangent * d1.Y);
        item.End ??= new(meet.X + tangent * d2.X, meet.Y + tangent * d2.Y);
        (item.StartDirection, item.EndDirection) = (d1, d2);
        var turn = Math.Sign(cross);
        item.Centre = new(item.Start.Value.X - turn * radius * d1.Y, item.Start.Value.Y + turn * radius * d1.X);
        if (item.Length > 0 && Math.Abs(radius * angle - item.Length) > Agree) _notes.Add(SiteText($"the curve in line {item.Line} says it is {item.Length:0.####} long and is {radius * angle:0.####}"));
    }

    private static (double X, double Y)? Direction(SiteVertex from, SiteVertex to)
    {
        var length = SiteGeometry.Distance(from, to);
        return length > 0 ? ((to.X - from.X) / length, (to.Y - from.Y) / length) : null;
    }

    /// <summary>The tangent before the first element, which is only told by the stations.</summary>
    private void LeadIn(double startStation)
    {
        var first = items[0];
        var length = first.StartStation - startStation;
        if (!(length > Near) || !(length < 1e6) || first.StartDirection is not { } d) return;
        var start = first.Start!.Value;
        _line.Add(new(start.X - length * d.X, start.Y - length * d.Y));
        _notes.Add(SiteText($"the straight of {length:0.####} before its first element is told only by the stations"));
    }

    private void LeadOut(double length)
    {
        if (items[^1].EndDirection is not { } d || items[^1].Kind != "Curve" || items[^1].Meet is null) return;
        var missing = length - SiteGeometry.Length(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_line), false);
        if (!(missing > Agree) || !(missing < 1e6)) return;
        var end = _line[^1];
        _line.Add(new(end.X + missing * d.X, end.Y + missing * d.Y));
        _notes.Add(SiteText($"the straight of {missing:0.####} behind its last element is told only by its length"));
    }

    /// <summary>Adds an element; the reason where it cannot be.</summary>
    private string? Append(GeomItem item)
    {
        var (start, end) = (item.Start!.Value, item.End!.Value);
        if (_line.Count > 0 && SiteGeometry.Distance(_line[^1], start) > Near && item.Meet is null)
            _notes.Add(SiteText($"the {item.Kind} in line {item.Line} begins {SiteGeometry.Distance(_line[^1], start):0.####} from where the one before ends; they are joined straight"));
        if (_line.Count == 0 || SiteGeometry.Distance(_line[^1], start) > Near) _line.Add(start with { Bulge = 0 });
        switch (item.Kind)
        {
            case "Curve":
                if (Bulge(item, start, end) is not { } bulge) return SiteText($"its Curve in line {item.Line} has neither a centre nor a radius that fits");
                _line[^1] = _line[^1] with { Bulge = bulge };
                break;
            case "Spiral":
                if (!Spiral(item, start, end)) return SiteText($"its Spiral in line {item.Line} does not lead from its start to its end as a clothoid");
                break;
            default: _line.AddRange(item.Between.Select(p => p with { Bulge = 0 })); break;
        }
        _line.Add(end with { Bulge = 0 });
        return null;
    }

    private double? Bulge(GeomItem item, SiteVertex start, SiteVertex end)
    {
        if (item.Centre is { } centre)
        {
            var (r1, r2) = (SiteGeometry.Distance(start, centre), SiteGeometry.Distance(end, centre));
            if (!(r1 > 0) || Math.Abs(r1 - r2) > Agree + 1e-6 * r1) _notes.Add(SiteText($"the curve in line {item.Line} is {r1:0.####} from its centre at one end and {r2:0.####} at the other"));
            if (item.Radius > 0 && Math.Abs(item.Radius - r1) > Agree + 1e-6 * r1) _notes.Add(SiteText($"the curve in line {item.Line} says its radius is {item.Radius:0.####}; its start is {r1:0.####} from its centre"));
            var sweep = Math.Atan2(end.Y - centre.Y, end.X - centre.X) - Math.Atan2(start.Y - centre.Y, start.X - centre.X);
            var turn = item.Turn != 0 ? item.Turn : Math.Sign(Math.Sin(sweep));
            if (turn > 0 && sweep <= 0) sweep += 2 * Math.PI;
            if (turn < 0 && sweep >= 0) sweep -= 2 * Math.PI;
            return Math.Abs(sweep) < 2 * Math.PI - 1e-9 ? Math.Tan(sweep / 4) : null;
        }
        var half = SiteGeometry.Distance(start, end) / 2;
        if (!(item.Radius >= half * (1 - 1e-9)) || half == 0) return null;
        var angle = 2 * Math.Asin(Math.Min(1, half / item.Radius));
        if (item.Length > Math.PI * item.Radius) angle = 2 * Math.PI - angle;
        return (item.Turn < 0 ? -1 : 1) * Math.Tan(angle / 4);
    }

    /// <summary>
    /// A clothoid: the curvature runs evenly along. Its direction at the start points to the meeting of the tangents. False where it ends elsewhere than the file says.
    /// </summary>
    private bool Spiral(GeomItem item, SiteVertex start, SiteVertex end)
    {
        if (!(item.Length > 0) || !double.IsFinite(item.Length)) return false;
        var heading = item.Meet is { } meet ? Direction(start, meet) : item.StartDirection;
        if (heading is not { } d) return false;
        var turn = item.Turn < 0 ? -1 : 1;
        var (k0, k1) = (turn * Curvature(item.Radius), turn * Curvature(item.EndRadius));
        if (!double.IsFinite(k0) || !double.IsFinite(k1)) return false;
        // A chord of length c on curvature k leaves the curve by k c^2 / 8.
        var sharpest = Math.Max(Math.Abs(k0), Math.Abs(k1));
        var pieces = (int)Math.Clamp(Math.Ceiling(item.Length * Math.Sqrt(sharpest / (8 * tolerance))), 2, 2000);
        List<SiteVertex> points = [];
        var (x, y, step) = (start.X, start.Y, item.Length / pieces);
        var phi = Math.Atan2(d.Y, d.X);
        for (var i = 0; i < pieces; i++)
        {
            var (dx, dy) = Integral(phi, k0, (k1 - k0) / item.Length, i * step, step);
            (x, y) = (x + dx, y + dy);
            points.Add(new(x, y));
        }
        var miss = SiteGeometry.Distance(points[^1], end);
        if (!(miss <= Agree + 1e-5 * item.Length)) return false;
        points.RemoveAt(points.Count - 1);
        _line.AddRange(points);
        _spirals++;
        return true;
    }

    private static double Curvature(double radius) => double.IsInfinity(radius) || double.IsNaN(radius) ? 0 : 1 / radius;

    // Gauss's rule with three points: the pieces turn by little, so it is good to far below a micrometre.
    private static (double X, double Y) Integral(double phi, double k0, double rate, double from, double step)
    {
        var (x, y) = (0.0, 0.0);
        foreach (var (at, weight) in ((double, double)[])[(0.5 - Math.Sqrt(0.15), 5.0 / 18), (0.5, 8.0 / 18), (0.5 + Math.Sqrt(0.15), 5.0 / 18)])
        {
            var s = from + at * step;
            var (sin, cos) = Math.SinCos(phi + k0 * s + rate * s * s / 2);
            (x, y) = (x + weight * step * cos, y + weight * step * sin);
        }
        return (x, y);
    }
}
