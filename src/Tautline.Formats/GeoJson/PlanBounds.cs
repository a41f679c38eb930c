namespace Tautline.Formats.GeoJson;

/// <summary>The upright box around positions, in whatever unit they are.</summary>
internal readonly record struct PlanBounds(double Left, double Bottom, double Right, double Top)
{
    public static readonly PlanBounds Nothing =
        new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    public double MiddleX => Left + (Right - Left) / 2;
    public double MiddleY => Bottom + (Top - Bottom) / 2;
    public double Size => Math.Max(Right - Left, Top - Bottom);

    public PlanBounds With(double x, double y) =>
        new(Math.Min(Left, x), Math.Min(Bottom, y), Math.Max(Right, x), Math.Max(Top, y));

    public static PlanBounds Of(IEnumerable<RawLine> lines) =>
        lines.SelectMany(l => l.Positions).Aggregate(Nothing, (box, p) => box.With(p.X, p.Y));
}
