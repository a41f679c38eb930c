using System.Collections.Immutable;
using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Reasons;

/// <summary>The recording number: the same formula run with it yields the expression behind its value.</summary>
public readonly record struct Traced(Expr Expr) : INumber<Traced>
{
    public double Value => Expr.Value;

    public static Traced Given(string name, double value, Unit unit) => Leaf(LeafKind.Given, name, value, unit, null);

    public static Traced Rule(Limit limit) => Leaf(LeafKind.Rule, limit.Key, limit.Value, limit.Unit, limit.From);

    public static Traced Listed(string name, double value, Unit unit, Provenance from) => Leaf(LeafKind.Listed, name, value, unit, from);

    public static Traced Known(FactKey key, double value, Unit unit)
        => new(new Leaf(LeafKind.Known, FactNames.Of(key.Kind), value, unit, null, key));

    public static Traced Constant(double value) => Leaf(LeafKind.Constant, "", value, Unit.Ratio, null);

    public static Traced operator +(Traced a, Traced b) => Same(Op.Add, a, b, a.Value + b.Value);
    public static Traced operator -(Traced a, Traced b) => Same(Op.Subtract, a, b, a.Value - b.Value);
    public static Traced operator *(Traced a, Traced b) => Make(Op.Multiply, a.Value * b.Value, a.Expr.Unit * b.Expr.Unit, a, b);
    public static Traced operator /(Traced a, Traced b) => Make(Op.Divide, a.Value / b.Value, a.Expr.Unit / b.Expr.Unit, a, b);
    public static Traced Root(Traced a) => Make(Op.Root, Math.Sqrt(a.Value), a.Expr.Unit.Root(), a);
    public static Traced Power(Traced a, Traced exponent) => Bare(Op.Power, Growth.Power(a.Value, exponent.Value), a, exponent);
    public static Traced Exp(Traced a) => Bare(Op.Exp, Growth.Exp(a.Value), a);
    public static Traced Log(Traced a) => Bare(Op.Log, Growth.Log(a.Value), a);
    public static Traced Size(Traced a) => Make(Op.Size, Math.Abs(a.Value), a.Expr.Unit, a);
    public static Traced Larger(Traced a, Traced b) => Same(Op.Larger, a, b, Math.Max(a.Value, b.Value));
    public static Traced Smaller(Traced a, Traced b) => Same(Op.Smaller, a, b, Math.Min(a.Value, b.Value));
    public static Traced Cover(Traced a, Traced b) => Whole(Op.Cover, a, b, Decide.Cover(a.Value, b.Value));
    public static Traced Fit(Traced a, Traced b) => Whole(Op.Fit, a, b, Decide.Fit(a.Value, b.Value));
    public static Traced Nearest(Traced a, Traced b) => Whole(Op.Nearest, a, b, Decide.Nearest(a.Value, b.Value));

    public static Traced NextSize(Traced a, Ladder ladder)
    {
        var rungs = ladder.Sizes.Select(s => (Expr)new Leaf(LeafKind.Listed, ladder.Name, s, a.Expr.Unit, ladder.From, null));
        return new(new Operation(Op.NextSize, [a.Expr, .. rungs], Decide.NextSize(a.Value, ladder.Sizes), a.Expr.Unit));
    }

    public static Traced Sum(ReadOnlySpan<Traced> terms)
    {
        var of = ImmutableArray.CreateBuilder<Expr>(terms.Length);
        var sum = 0.0;
        foreach (var term in terms)
        {
            if (term.Expr.Unit != terms[0].Expr.Unit) throw new InvalidOperationException("a sum mixes units");
            of.Add(term.Expr);
            sum += term.Value;
        }
        return new(new Operation(Op.Sum, of.MoveToImmutable(), sum, terms[0].Expr.Unit));
    }

    public static Traced Pack(Traced stick, ReadOnlySpan<Traced> pieces)
    {
        var of = ImmutableArray.CreateBuilder<Expr>(pieces.Length + 1);
        of.Add(stick.Expr);
        foreach (var piece in pieces) of.Add(piece.Expr);
        var lengths = of.Skip(1).Select(p => p.Value).ToArray();
        return new(new Operation(Op.Pack, of.MoveToImmutable(), Decide.Pack(stick.Value, lengths), Unit.Count));
    }

    private static Traced Leaf(LeafKind kind, string name, double value, Unit unit, Provenance? from)
        => new(new Leaf(kind, name, value, unit, from, null));

    private static Traced Make(Op op, double value, Unit unit, params ReadOnlySpan<Traced> of)
    {
        var parts = ImmutableArray.CreateBuilder<Expr>(of.Length);
        foreach (var part in of) parts.Add(part.Expr);
        return new(new Operation(op, parts.MoveToImmutable(), value, unit));
    }

    /// <summary>An operation that only bare numbers have.</summary>
    private static Traced Bare(Op op, double value, params ReadOnlySpan<Traced> of)
    {
        foreach (var part in of)
            if (part.Expr.Unit != Unit.Ratio) throw new InvalidOperationException($"{op} of {part.Expr.Unit}: only of a ratio");
        return Make(op, value, Unit.Ratio, of);
    }

    private static Traced Same(Op op, Traced a, Traced b, double value)
        => a.Expr.Unit == b.Expr.Unit
            ? Make(op, value, a.Expr.Unit, a, b)
            : throw new InvalidOperationException($"{op} of {a.Expr.Unit} and {b.Expr.Unit}: a formula mixes units");

    private static Traced Whole(Op op, Traced a, Traced b, double value)
        => a.Expr.Unit == b.Expr.Unit
            ? Make(op, value, Unit.Count, a, b)
            : throw new InvalidOperationException($"{op} of {a.Expr.Unit} and {b.Expr.Unit}: a formula mixes units");
}
