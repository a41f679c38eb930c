using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Reasons;

/// <summary>Bare arithmetic: nothing is recorded and nothing allocated.</summary>
public readonly record struct Plain(double Value) : INumber<Plain>
{
    public static Plain Given(string name, double value, Unit unit) => new(value);
    public static Plain Rule(Limit limit) => new(limit.Value);
    public static Plain Listed(string name, double value, Unit unit, Provenance from) => new(value);
    public static Plain Known(FactKey key, double value, Unit unit) => new(value);
    public static Plain Constant(double value) => new(value);
    public static Plain operator +(Plain a, Plain b) => new(a.Value + b.Value);
    public static Plain operator -(Plain a, Plain b) => new(a.Value - b.Value);
    public static Plain operator *(Plain a, Plain b) => new(a.Value * b.Value);
    public static Plain operator /(Plain a, Plain b) => new(a.Value / b.Value);
    public static Plain Root(Plain a) => new(Math.Sqrt(a.Value));
    public static Plain Power(Plain a, Plain exponent) => new(Growth.Power(a.Value, exponent.Value));
    public static Plain Exp(Plain a) => new(Growth.Exp(a.Value));
    public static Plain Log(Plain a) => new(Growth.Log(a.Value));
    public static Plain Size(Plain a) => new(Math.Abs(a.Value));
    public static Plain Larger(Plain a, Plain b) => new(Math.Max(a.Value, b.Value));
    public static Plain Smaller(Plain a, Plain b) => new(Math.Min(a.Value, b.Value));
    public static Plain Cover(Plain a, Plain b) => new(Decide.Cover(a.Value, b.Value));
    public static Plain Fit(Plain a, Plain b) => new(Decide.Fit(a.Value, b.Value));
    public static Plain Nearest(Plain a, Plain b) => new(Decide.Nearest(a.Value, b.Value));
    public static Plain NextSize(Plain a, Ladder ladder) => new(Decide.NextSize(a.Value, ladder.Sizes));

    public static Plain Sum(ReadOnlySpan<Plain> terms)
    {
        var sum = 0.0;
        foreach (var term in terms) sum += term.Value;
        return new(sum);
    }

    public static Plain Pack(Plain stick, ReadOnlySpan<Plain> pieces)
    {
        var lengths = new double[pieces.Length];
        for (var i = 0; i < lengths.Length; i++) lengths[i] = pieces[i].Value;
        return new(Decide.Pack(stick.Value, lengths));
    }
}
