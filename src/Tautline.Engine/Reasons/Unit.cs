namespace Tautline.Engine.Reasons;

/// <summary>The dimension of an SI number, as powers of metre, kilogram and second. A count or a ratio has none.</summary>
public readonly record struct Unit(int Metre, int Kilogram, int Second = 0)
{
    public static Unit Count => new(0, 0);
    public static Unit Ratio => new(0, 0);
    public static Unit Length => new(1, 0);
    public static Unit Area => new(2, 0);
    public static Unit Volume => new(3, 0);
    public static Unit Mass => new(0, 1);
    public static Unit LinearMass => new(-1, 1);

    /// <summary>Of area, to the fourth power of a length.</summary>
    public static Unit SecondMoment => new(4, 0);
    public static Unit PerLength => new(-1, 0);
    public static Unit Speed => new(1, 0, -1);
    public static Unit Density => new(-3, 1);
    public static Unit Force => new(1, 1, -2);

    /// <summary>Pressure or stress.</summary>
    public static Unit Pressure => new(-1, 1, -2);
    public static Unit LineLoad => new(0, 1, -2);
    public static Unit Moment => new(2, 1, -2);

    /// <summary>Pressure for each length of depth, or weight for each volume.</summary>
    public static Unit PressurePerLength => new(-2, 1, -2);

    public static Unit operator *(Unit a, Unit b) => new(a.Metre + b.Metre, a.Kilogram + b.Kilogram, a.Second + b.Second);

    public static Unit operator /(Unit a, Unit b) => new(a.Metre - b.Metre, a.Kilogram - b.Kilogram, a.Second - b.Second);

    /// <summary>The unit of a square root; odd powers have none here.</summary>
    /// <exception cref="InvalidOperationException">A power is odd.</exception>
    public Unit Root() => Metre % 2 == 0 && Kilogram % 2 == 0 && Second % 2 == 0
        ? new(Metre / 2, Kilogram / 2, Second / 2)
        : throw new InvalidOperationException($"no square root of {this}");
}
