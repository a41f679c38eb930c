using System.Collections.Immutable;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Dxf;

/// <summary>Makes features of entities, blocks unfolded.</summary>
internal sealed class DxfShapes(SiteCollector found, Dictionary<string, DxfBlock> blocks, HashSet<string> hiddenLayers)
{
    private const int DeepestBlock = 16;
    private const int MostUnfolded = 5_000_000;

    private readonly List<string> _inside = [];
    private readonly HashSet<string> _hiddenMet = new(StringComparer.Ordinal);
    private int _unfolded, _hidden, _bent;

    /// <summary>Where an entity stands: how its plane lies in the world, and what it takes over from the blocks around it.</summary>
    private sealed record Place(DxfMatrix Matrix, int Number, string Layer, string Block)
    {
        public int Part { get; set; } = 1;
    }

    /// <summary>Whether entities of a type are worth keeping the groups of.</summary>
    public static bool Reads(string type) => type is "LINE" or "POINT" or "ARC" or "CIRCLE" or "LWPOLYLINE" or "POLYLINE" or "VERTEX" or "ELLIPSE" or "SPLINE" or "TEXT" or "MTEXT"
        or "INSERT" or "ATTRIB";

    public void Draw(DxfEntity entity) => Draw(entity, new(DxfMatrix.Identity, found.NextNumber(), "", ""));

    public void Done()
    {
        foreach (var layer in _hiddenMet) found.Hide(layer);
        if (_hidden > 0) found.Problems.Add(DxfFindings.Hidden(_hiddenMet.Count, _hidden));
        if (_bent > 0) found.Problems.Add(DxfFindings.Bent(_bent));
    }

    private void Draw(DxfEntity e, Place at)
    {
        if (e.InPaperSpace) found.Skip(e.Type, DxfFindings.PaperSpace);
        else if (e.Invisible) found.Skip(e.Type, DxfFindings.Invisible);
        else if (!DrawKnown(e, at)) found.Skip(e.Type, WhyNot(e.Type));
    }

    private bool DrawKnown(DxfEntity e, Place at)
    {
        switch (e.Type)
        {
            case "LINE": Path(e, at, at.Matrix, [Vertex(e.Place(10)), Vertex(e.Place(11))], closed: false); break;
            case "POINT": Point(e, at, at.Matrix, e.Place(10), ""); break;
            case "ARC": Arc(e, at); break;
            case "CIRCLE": Circle(e, at); break;
            case "LWPOLYLINE": LightPolyline(e, at); break;
            case "POLYLINE": Polyline(e, at); break;
            case "ELLIPSE": Ellipse(e, at); break;
            case "SPLINE": Spline(e, at); break;
            case "TEXT": Point(e, at, InPlane(e, at), e.Place(e.Flag(72) != 0 || e.Flag(73) != 0 ? 11 : 10), DxfText.Plain(e.Text(1))); break;
            case "MTEXT": Point(e, at, at.Matrix, e.Place(10), DxfText.Unformatted(string.Concat(e.Groups.Where(g => g.Code is 1 or 3).Select(g => g.Text)))); break;
            case "INSERT": Insert(e, at); break;
            default: return false;
        }
        return true;
    }

    private static string WhyNot(string type) => type switch
    {
        "HATCH" or "SOLID" or "TRACE" or "WIPEOUT" => DxfFindings.Filling,
        "DIMENSION" or "LEADER" or "MLEADER" or "MULTILEADER" or "TOLERANCE" or "ARC_DIMENSION" or "LARGE_RADIAL_DIMENSION" => DxfFindings.Dimension,
        "3DFACE" => DxfFindings.Face,
        "3DSOLID" or "BODY" or "REGION" or "MESH" or "SURFACE" => DxfFindings.Mesh,
        "ACAD_PROXY_ENTITY" or "ACAD_PROXY_OBJECT" => DxfFindings.Proxy,
        _ => DxfFindings.OtherKind,
    };

    private static DxfMatrix InPlane(DxfEntity e, Place at) =>
        e.Has(210) || e.Has(220) || e.Has(230) ? at.Matrix.After(DxfMatrix.OfExtrusion((e.Number(210), e.Number(220), e.Number(230, 1)))) : at.Matrix;

    private static SiteVertex Vertex((double X, double Y, double Z) p, double bulge = 0) => new(p.X, p.Y, p.Z, bulge);

    private void Arc(DxfEntity e, Place at)
    {
        var (centre, radius, from) = (e.Place(10), e.Number(40), e.Number(50));
        var sweep = (e.Number(51) - from) % 360;
        if (sweep <= 0) sweep += 360;
        if (!(radius > 0) || !double.IsFinite(sweep))
        {
            found.Skip(e.Type, DxfFindings.NoCurve);
            return;
        }
        if (sweep == 360) Circle(e, at);
        else Path(e, at, InPlane(e, at), [On(centre, radius, from, Bulge(sweep)), On(centre, radius, from + sweep, 0)], closed: false);
    }

    private void Circle(DxfEntity e, Place at)
    {
        var (centre, radius) = (e.Place(10), e.Number(40));
        if (radius > 0) Path(e, at, InPlane(e, at), [On(centre, radius, 0, 1), On(centre, radius, 180, 1)], closed: true);
        else found.Skip(e.Type, DxfFindings.NoCurve);
    }

    private static double Bulge(double sweepDegrees) => Math.Tan(double.DegreesToRadians(sweepDegrees) / 4);

    private static SiteVertex On((double X, double Y, double Z) centre, double radius, double degrees, double bulge)
    {
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));
        return new(centre.X + radius * cos, centre.Y + radius * sin, centre.Z, bulge);
    }

    private void LightPolyline(DxfEntity e, Place at)
    {
        List<SiteVertex> vertices = [];
        var height = e.Number(38);
        foreach (var group in e.Groups)
        {
            if (group.Code == 10) vertices.Add(new(group.Number, 0, height));
            else if (vertices.Count == 0) continue;
            else if (group.Code == 20) vertices[^1] = vertices[^1] with { Y = group.Number };
            else if (group.Code == 42) vertices[^1] = vertices[^1] with { Bulge = group.Number };
        }
        if (e.Has(90) && e.Number(90) != vertices.Count) found.Problems.AddAtLine(DxfFindings.VertexCount(e.Number(90), vertices.Count), e.Line);
        Path(e, at, InPlane(e, at), vertices, (e.Flag(70) & 1) != 0);
    }

    private void Polyline(DxfEntity e, Place at)
    {
        var flags = e.Flag(70);
        if ((flags & (16 | 64)) != 0)
        {
            found.Skip(e.Type, DxfFindings.Mesh);
            return;
        }
        var (solid, height) = ((flags & 8) != 0, e.Number(30));
        List<SiteVertex> vertices = [];
        foreach (var part in e.Parts ?? [])
        {
            // The frame that a fitted curve hangs on is not on the curve.
            if (part.Type != "VERTEX" || (part.Flag(70) & 16) != 0) continue;
            var (x, y, z) = part.Place(10);
            vertices.Add(new(x, y, solid ? z : height, solid ? 0 : part.Number(42)));
        }
        Path(e, at, solid ? at.Matrix : InPlane(e, at), vertices, (flags & 1) != 0);
    }

    private void Ellipse(DxfEntity e, Place at)
    {
        var (major, ratio, normal) = (e.Place(11), e.Number(40), (X: e.Number(210), Y: e.Number(220), Z: e.Number(230, 1)));
        var (from, to) = (e.Number(41), e.Number(42, 2 * Math.PI));
        while (to <= from && double.IsFinite(from) && from - to < 100) to += 2 * Math.PI;
        // The short axis is the long one turned in the plane.
        var size = Math.Sqrt(normal.X * normal.X + normal.Y * normal.Y + normal.Z * normal.Z);
        var (nx, ny, nz) = (normal.X / size, normal.Y / size, normal.Z / size);
        var minor = ((ny * major.Z - nz * major.Y) * ratio, (nz * major.X - nx * major.Z) * ratio, (nx * major.Y - ny * major.X) * ratio);
        var tolerance = Tolerance(at.Matrix);
        var points = DxfCurves.Ellipse(e.Place(10), major, minor, from, to, tolerance);
        if (points is null || !(ratio > 0))
        {
            found.Skip(e.Type, DxfFindings.NoCurve);
            return;
        }
        var round = to - from >= 2 * Math.PI - 1e-9;
        if (round) points.RemoveAt(points.Count - 1);
        found.Flattened(ToleranceOut());
        Path(e, at, at.Matrix, points, round);
    }

    private void Spline(DxfEntity e, Place at)
    {
        List<double> knots = [], weights = [];
        List<SiteVertex> controls = [], fits = [];
        foreach (var group in e.Groups)
            switch (group.Code)
            {
                case 40: knots.Add(group.Number); break;
                case 41: weights.Add(group.Number); break;
                case 10: controls.Add(new(group.Number, 0, 0)); break;
                case 20 when controls.Count > 0: controls[^1] = controls[^1] with { Y = group.Number }; break;
                case 30 when controls.Count > 0: controls[^1] = controls[^1] with { Z = group.Number }; break;
                case 11: fits.Add(new(group.Number, 0, 0)); break;
                case 21 when fits.Count > 0: fits[^1] = fits[^1] with { Y = group.Number }; break;
                case 31 when fits.Count > 0: fits[^1] = fits[^1] with { Z = group.Number }; break;
            }
        var points = controls.Count > 0 ? DxfCurves.Spline(e.Flag(71), knots, controls, weights, Tolerance(at.Matrix)) : fits.Count > 1 ? fits : null;
        if (points is null || !points.TrueForAll(p => double.IsFinite(p.X) && double.IsFinite(p.Y)))
        {
            found.Skip(e.Type, DxfFindings.NoCurve);
            return;
        }
        if (controls.Count > 0) found.Flattened(ToleranceOut());
        else found.Problems.AddAtLine(DxfFindings.FitPoints, e.Line);
        Path(e, at, at.Matrix, points, (e.Flag(70) & 1) != 0);
    }

    private double ToleranceOut() => found.Claims.Unit is { } unit ? found.Options.FlattenTolerance / unit.Metres : found.Options.FlattenTolerance;

    private double Tolerance(DxfMatrix matrix) => ToleranceOut() / Math.Max(matrix.InPlan.Scale, 1e-9);

    /// <summary>A line in an entity's own plane, brought to the world. Arcs stay arcs where the plane allows it.</summary>
    private void Path(DxfEntity e, Place at, DxfMatrix matrix, List<SiteVertex> own, bool closed)
    {
        var (circles, mirrored, _) = matrix.InPlan;
        if (!circles && own.Exists(v => v.Bulge != 0) && own.TrueForAll(v => double.IsFinite(v.X) && double.IsFinite(v.Y) && double.IsFinite(v.Bulge)))
        {
            own = SiteGeometry.Flattened([.. own], closed, Tolerance(matrix));
            found.Flattened(ToleranceOut());
            _bent++;
        }
        List<SiteVertex> vertices = new(own.Count);
        foreach (var v in own)
        {
            var (x, y, z) = matrix.Apply((v.X, v.Y, v.Z));
            vertices.Add(new(x, y, z, mirrored ? -v.Bulge : v.Bulge));
        }
        if (found.Line(Feature(e, at, "") with { Closed = closed }, vertices)) at.Part++;
    }

    private void Point(DxfEntity e, Place at, DxfMatrix matrix, (double X, double Y, double Z) place, string label, ImmutableSortedDictionary<string, string>? tags = null)
    {
        var (x, y, z) = matrix.Apply(place);
        found.Point(Feature(e, at, label) with { Vertices = [new(x, y, z)], Tags = tags ?? SiteFeature.NoTags });
        at.Part++;
    }

    private SiteFeature Feature(DxfEntity e, Place at, string label)
    {
        var layer = LayerOf(e, at);
        if (hiddenLayers.Contains(layer))
        {
            _hiddenMet.Add(layer);
            _hidden++;
        }
        return new() { Number = at.Number, Part = at.Part, Kind = e.Type, Layer = layer, Label = label, Block = at.Block, Line = e.Line, Vertices = [] };
    }

    // Layer 0 inside a block is the layer the block is inserted on.
    private static string LayerOf(DxfEntity e, Place at) => e.Layer is var own && at.Block.Length > 0 && own is "0" or "" ? at.Layer : own;

    private void Insert(DxfEntity e, Place at)
    {
        var (name, matrix) = (e.Text(2), InPlane(e, at));
        Point(e, at, matrix, e.Place(10), name, Attributes(e));
        if (!blocks.TryGetValue(name, out var block)) found.Skip("INSERT", DxfFindings.NoBlock);
        else if (block.Outside) found.Skip("INSERT", DxfFindings.Outside);
        else if (_inside.Count >= DeepestBlock || _inside.Contains(block.Name)) found.Skip("INSERT", DxfFindings.InItself);
        else Unfold(e, at, matrix, block);
    }

    private static ImmutableSortedDictionary<string, string> Attributes(DxfEntity e)
    {
        if (e.Parts is null) return SiteFeature.NoTags;
        var tags = SiteFeature.NoTags.ToBuilder();
        foreach (var part in e.Parts)
            if (part.Text(2) is { Length: > 0 } tag) tags[tag] = DxfText.Plain(part.Text(1));
        return tags.ToImmutable();
    }

    private void Unfold(DxfEntity e, Place at, DxfMatrix plane, DxfBlock block)
    {
        var (columns, rows) = (Math.Max(1, e.Flag(70)), Math.Max(1, e.Flag(71)));
        var turn = DxfMatrix.OfInsert(e.Place(10), e.Number(50), e.Number(41, 1), e.Number(42, 1), e.Number(43, 1));
        // An array runs along the turned axes, in drawing units: its spacing is not scaled.
        var grid = DxfMatrix.OfInsert((0, 0, 0), e.Number(50), 1, 1, 1);
        _inside.Add(block.Name);
        for (var row = 0; row < rows; row++)
            for (var column = 0; column < columns; column++)
            {
                var (x, y, z) = grid.Apply((column * e.Number(44), row * e.Number(45), 0));
                var matrix = plane.After(DxfMatrix.OfShift(x, y, z).After(turn.After(DxfMatrix.OfShift(-block.Base.X, -block.Base.Y, -block.Base.Z))));
                var inside = new Place(matrix, at.Number, LayerOf(e, at), at.Block.Length > 0 ? at.Block : block.Name) { Part = at.Part };
                Spend(1);
                foreach (var part in block.Entities)
                {
                    Spend(1);
                    Draw(part, inside);
                }
                at.Part = inside.Part;
            }
        _inside.RemoveAt(_inside.Count - 1);
    }

    private void Spend(int count)
    {
        _unfolded += count;
        if (_unfolded > Math.Min(MostUnfolded, (long)found.Options.Limits.Features * 2)) throw new SiteStop(DxfFindings.Budget(MostUnfolded));
        if ((_unfolded & 0xFFF) == 0) found.Options.Cancelled.ThrowIfCancellationRequested();
    }
}
