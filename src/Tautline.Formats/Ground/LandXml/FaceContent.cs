using System.Collections.Immutable;

namespace Tautline.Formats.Ground;

/// <summary>A triangulated surface in the file's coordinates and units: the faces that are seen. Nothing is triangulated anew.</summary>
public sealed record FaceContent : GroundContent
{
    public required string Name { get; init; }

    /// <summary>All points of the surface, used or not, in the order of the file.</summary>
    public required ImmutableArray<FilePoint> Points { get; init; }

    /// <summary>Three places in <see cref="Points"/> for each face that is seen.</summary>
    public required ImmutableArray<int> Faces { get; init; }

    /// <summary>Faces the file marks as not seen; they are left out, or there would be ground under buildings and across bays.</summary>
    public int InvisibleFaces { get; init; }

    /// <summary>Outlines the surface was made with: "outer", "void", "island".</summary>
    public ImmutableArray<FileLine> Boundaries { get; init; } = [];

    /// <summary>Lines the surface was made with; mostly without heights, for the faces already follow them.</summary>
    public ImmutableArray<FileLine> Breaklines { get; init; } = [];

    /// <summary>Area in plan, in the file's unit squared.</summary>
    public double PlanArea => Sum(p => p.Plan);

    /// <summary>Area on the slope, in the file's unit squared; means something only where heights and plan are in one unit.</summary>
    public double SlopeArea => Sum(p => p.OnSlope);

    /// <inheritdoc/>
    public override GroundExtent Extent => Faces.Aggregate(GroundExtent.Nothing, (box, i) => box.With(Points[i].East, Points[i].North));

    /// <inheritdoc/>
    public override (double Lowest, double Highest) Heights => Faces.IsEmpty
        ? (double.NaN, double.NaN)
        : (Faces.Min(i => Points[i].Height), Faces.Max(i => Points[i].Height));

    internal override Slopes? Slopes
    {
        get
        {
            var slopes = new Slopes();
            for (var i = 0; i < Faces.Length; i += 3) AreasOf(i).AddTo(slopes);
            return slopes.IsEmpty ? null : slopes;
        }
    }

    // With the rounding of each step carried along (Neumaier 1974), so that the sum has all the digits the terms have.
    private double Sum(Func<Areas, double> which)
    {
        var (sum, lost) = (0.0, 0.0);
        for (var i = 0; i < Faces.Length; i += 3)
        {
            var term = which(AreasOf(i));
            var next = sum + term;
            lost += Math.Abs(sum) >= Math.Abs(term) ? sum - next + term : term - next + sum;
            sum = next;
        }
        return sum + lost;
    }

    private Areas AreasOf(int face) => Areas.Of(Points[Faces[face]], Points[Faces[face + 1]], Points[Faces[face + 2]]);

    /// <summary>Of one face.</summary>
    private readonly record struct Areas(double Plan, double OnSlope)
    {
        public static Areas Of(FilePoint a, FilePoint b, FilePoint c)
        {
            var (e1, n1, h1) = (b.East - a.East, b.North - a.North, b.Height - a.Height);
            var (e2, n2, h2) = (c.East - a.East, c.North - a.North, c.Height - a.Height);
            var (x, y, z) = (n1 * h2 - h1 * n2, h1 * e2 - e1 * h2, e1 * n2 - n1 * e2);
            return new(Math.Abs(z) / 2, Math.Sqrt(x * x + y * y + z * z) / 2);
        }

        /// <summary>The slope of a plane is the root of (area on the slope over area in plan) squared less one.</summary>
        public void AddTo(Slopes slopes)
        {
            var ratio = OnSlope / Plan;
            slopes.Add(Math.Sqrt(Math.Max(0, (ratio - 1) * (ratio + 1))), Plan);
        }
    }
}
