namespace Tautline.Engine.Reasons;

/// <summary>The dimension of an SI number, as powers of metre and kilogram. A count or a ratio has none.</summary>
public readonly record struct Unit(int Metre, int Kilogram)
{
    public static Unit Count => new(0, 0);
    public static Unit Ratio => new(0, 0);
    public static Unit Length => new(1, 0);
    public static Unit Area => new(2, 0);
    public static Unit Volume => new(3, 0);
    public static Unit Mass => new(0, 1);
    public static Unit LinearMass => new(-1, 1);

    public static Unit operator *(Unit a, Unit b) => new(a.Metre + b.Metre, a.Kilogram + b.Kilogram);

    public static Unit operator /(Unit a, Unit b) => new(a.Metre - b.Metre, a.Kilogram - b.Kilogram);

    /// <summary>The unit of a square root; odd powers have none here.</summary>
    /// <exception cref="InvalidOperationException">A power is odd.</exception>
    public Unit Root() => Metre % 2 == 0 && Kilogram % 2 == 0
        ? new(Metre / 2, Kilogram / 2)
        : throw new InvalidOperationException($"no square root of {this}");
}
