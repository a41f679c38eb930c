namespace Tautline.Formats.Sites.Dxf;

/// <summary>An affine map of space: what it makes of the three axes, and of the origin.</summary>
internal readonly record struct DxfMatrix(
    (double X, double Y, double Z) A, (double X, double Y, double Z) B, (double X, double Y, double Z) C, (double X, double Y, double Z) Origin)
{
    private const double Even = 1e-9; // how far a map may be from a turn with one scale and still keep circles

    public static readonly DxfMatrix Identity = new((1, 0, 0), (0, 1, 0), (0, 0, 1), (0, 0, 0));

    /// <summary>From the entity's own axes to the world's, by the arbitrary axis rule of the DXF Reference (Object Coordinate Systems).</summary>
    public static DxfMatrix OfExtrusion((double X, double Y, double Z) n)
    {
        var length = Math.Sqrt(n.X * n.X + n.Y * n.Y + n.Z * n.Z);
        if (!(length > 1e-12) || !double.IsFinite(length)) return Identity;
        n = (n.X / length, n.Y / length, n.Z / length);
        if (n is (0, 0, 1)) return Identity;
        const double Near = 1.0 / 64;
        var x = Unit(Math.Abs(n.X) < Near && Math.Abs(n.Y) < Near ? Cross((0, 1, 0), n) : Cross((0, 0, 1), n));
        return new(x, Unit(Cross(n, x)), n, (0, 0, 0));
    }

    /// <summary>Scale, then turn about the z axis, then shift.</summary>
    public static DxfMatrix OfInsert((double X, double Y, double Z) at, double degrees, double scaleX, double scaleY, double scaleZ)
    {
        var (sin, cos) = Turn(degrees);
        return new((cos * scaleX, sin * scaleX, 0), (-sin * scaleY, cos * scaleY, 0), (0, 0, scaleZ), at);
    }

    public static DxfMatrix OfShift(double x, double y, double z) => Identity with { Origin = (x, y, z) };

    /// <summary>This map after another.</summary>
    public DxfMatrix After(DxfMatrix first) => new(Turned(first.A), Turned(first.B), Turned(first.C), Apply(first.Origin));

    public (double X, double Y, double Z) Apply((double X, double Y, double Z) p)
    {
        var (x, y, z) = Turned(p);
        return (x + Origin.X, y + Origin.Y, z + Origin.Z);
    }

    /// <summary>Whether circles in the entity's plane stay circles in plan, and whether they then turn the other way.</summary>
    public (bool Circles, bool Mirrored, double Scale) InPlan
    {
        get
        {
            double a = A.X * A.X + A.Y * A.Y, b = B.X * B.X + B.Y * B.Y;
            var size = Math.Max(a, b);
            var even = Math.Abs(a - b) <= Even * size && Math.Abs(A.X * B.X + A.Y * B.Y) <= Even * size && Math.Abs(A.Z) + Math.Abs(B.Z) <= Even * Math.Sqrt(size);
            return (even && size > 0, A.X * B.Y - A.Y * B.X < 0, Math.Sqrt(size));
        }
    }

    /// <summary>Sine and cosine, exact at quarter turns: a block turned by 90 degrees keeps its straight lines straight on the grid.</summary>
    private static (double Sin, double Cos) Turn(double degrees) => (degrees % 360) switch
    {
        0 => (0, 1),
        90 or -270 => (1, 0),
        180 or -180 => (0, -1),
        270 or -90 => (-1, 0),
        var other => Math.SinCos(double.DegreesToRadians(other)),
    };

    private (double X, double Y, double Z) Turned((double X, double Y, double Z) p) => (
        A.X * p.X + B.X * p.Y + C.X * p.Z, A.Y * p.X + B.Y * p.Y + C.Y * p.Z, A.Z * p.X + B.Z * p.Y + C.Z * p.Z);

    private static (double X, double Y, double Z) Cross((double X, double Y, double Z) a, (double X, double Y, double Z) b) =>
        (a.Y * b.Z - a.Z * b.Y, a.Z * b.X - a.X * b.Z, a.X * b.Y - a.Y * b.X);

    private static (double X, double Y, double Z) Unit((double X, double Y, double Z) v)
    {
        var length = Math.Sqrt(v.X * v.X + v.Y * v.Y + v.Z * v.Z);
        return (v.X / length, v.Y / length, v.Z / length);
    }
}
