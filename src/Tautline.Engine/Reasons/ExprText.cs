using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Reasons;

/// <summary>Writes the expression behind a figure for people: in names, and with the numbers put in.</summary>
public static class ExprText
{
    /// <summary>Different terms of one sum that are written out; the rest is told by number and amount.</summary>
    public const int MostTerms = 12;

    private const int Loose = 1, Tight = 2, Whole = 3;

    /// <summary>The formula in names: 'hole.depth + hole.depthPerHeight x (larger(fence height, hole.depthFrom) - hole.depthFrom)'.</summary>
    public static string Symbols(Expr expr) => new Writer(null).Write(expr).Text;

    /// <summary>The same with the numbers put in, all lengths in one unit.</summary>
    public static string Numbers(Expr expr, UnitSystem units) => new Writer(ExprUnits.For(expr, units)).Write(expr).Text;

    /// <summary>The value alone, in the user's units and, for lengths, volumes and weights, in SI.</summary>
    public static string Result(Expr expr, UnitSystem units)
    {
        var shown = ExprUnits.For(expr, units);
        List<string> forms = [];
        if (expr is Operation && Math.Abs(expr.Value) >= ExprUnits.SmallVolume && shown.Cubic(expr.Value, expr.Unit) is { } cubic && AllLeaves(expr).Any(l => l.Unit == Unit.Length)) forms.Add(cubic);
        forms.Add(shown.Show(expr.Value, expr.Unit));
        if (expr.Unit == Unit.Length && Math.Abs(expr.Value) >= 0.3048) forms.Add(LengthText.Show(new Length(expr.Value), units));
        if (Si(expr) is { } si) forms.Add(si);
        return string.Join(" = ", forms.Distinct());
    }

    /// <summary>A part of an expression in the unit the whole is written in.</summary>
    public static string Value(Expr part, Expr whole, UnitSystem units) => ExprUnits.For(whole, units).Show(part.Value, part.Unit);

    /// <summary>A value by itself in the user's units: '24 in', '0.6 cu ft'.</summary>
    public static string Value(double value, Unit unit, UnitSystem units)
        => ExprUnits.For(new Leaf(LeafKind.Given, "", value, unit, null, null), units).Show(value, unit);

    /// <summary>What the words of a formula mean, for those it uses.</summary>
    public static IReadOnlyList<string> Legend(Expr expr)
    {
        var used = Operations(expr).Select(o => o.Op).ToHashSet();
        return [.. legend.Where(l => used.Contains(l.Op)).Select(l => l.Text)];
    }

    /// <summary>The ends of an expression, each different one once, in reading order. A ladder of sizes is one.</summary>
    public static IReadOnlyList<Leaf> Leaves(Expr expr)
        => [.. Ends(expr).DistinctBy(l => (l.Kind, l.Name, l.Fact, Value: l.Kind == LeafKind.Known ? 0 : l.Value))];

    /// <summary>The facts an expression uses, which can be asked next.</summary>
    public static IReadOnlyList<FactKey> Asks(Expr expr) => [.. Ends(expr).Select(l => l.Fact).OfType<FactKey>().Distinct()];

    /// <summary>The sizes of a ladder an expression chooses from.</summary>
    public static IReadOnlyList<Leaf> Ladder(Expr expr)
        => [.. Operations(expr).Where(o => o.Op == Op.NextSize).SelectMany(o => o.Of.Skip(1)).OfType<Leaf>().Distinct()];

    internal static IEnumerable<Leaf> AllLeaves(Expr expr) => expr switch
    {
        Leaf leaf => [leaf],
        Operation operation => operation.Of.SelectMany(AllLeaves),
        _ => [],
    };

    private static readonly (Op Op, string Text)[] legend =
    [
        (Op.Cover, "up( ) rounds up to a whole number"),
        (Op.Fit, "down( ) rounds down to a whole number"),
        (Op.Nearest, "nearest( ) rounds to the nearest whole number, halves up"),
        (Op.NextSize, "next( ) takes the next size that is made, at or over"),
        (Op.Larger, "larger( ) takes the larger of two"),
        (Op.Smaller, "smaller( ) takes the smaller of two"),
        (Op.Root, "root( ) is the square root"),
        (Op.Power, "a^b is a raised to the power b"),
        (Op.Exp, "exp( ) is e raised to a power"),
        (Op.Log, "ln( ) is the natural logarithm"),
        (Op.Pack, "packed( ) counts the sticks when the longest piece left is always cut first"),
    ];

    private static IEnumerable<Operation> Operations(Expr expr)
        => expr is Operation operation ? operation.Of.SelectMany(Operations).Prepend(operation) : [];

    private static IEnumerable<Leaf> Ends(Expr expr) => expr switch
    {
        Leaf { Kind: not LeafKind.Constant } leaf => [leaf],
        Operation { Op: Op.NextSize } next => Ends(next.Of[0]),
        Operation operation => operation.Of.SelectMany(Ends),
        _ => [],
    };

    private static string? Si(Expr expr) => (expr.Unit.Metre, expr.Unit.Kilogram, expr.Unit.Second) switch
    {
        (1, 0, 0) => $"{expr.Value.ToString("0.0000", CultureInfo.InvariantCulture)} m",
        (3, 0, 0) => Math.Abs(expr.Value) is > 0 and < ExprUnits.SmallVolume ? null : $"{expr.Value.ToString("0.00000", CultureInfo.InvariantCulture)} cu m",
        (0, 1, 0) => $"{expr.Value.ToString("0.00", CultureInfo.InvariantCulture)} kg",
        _ => null,
    };

    private readonly record struct Piece(string Text, int Binding)
    {
        public string Inside(int least) => Binding < least ? $"({Text})" : Text;
    }

    /// <summary>Writes with names where there are no units, else with numbers.</summary>
    private sealed class Writer(ExprUnits? units)
    {
        public Piece Write(Expr expr) => expr switch
        {
            Leaf leaf => Write(leaf),
            Operation operation => Write(operation),
            _ => new("?", Whole),
        };

        private Piece Write(Leaf leaf) => leaf.Kind == LeafKind.Constant
            ? new(Constant(leaf.Value), Whole)
            : new(units is null ? leaf.Name : units.Show(leaf.Value, leaf.Unit), Whole);

        private Piece Write(Operation o) => o.Op switch
        {
            Op.Add => new($"{Write(o.Of[0]).Text} + {Write(o.Of[1]).Inside(Loose)}", Loose),
            Op.Subtract => new($"{Write(o.Of[0]).Text} - {Write(o.Of[1]).Inside(Tight)}", Loose),
            Op.Multiply => new($"{Write(o.Of[0]).Inside(Tight)} x {Write(o.Of[1]).Inside(Whole)}", Tight),
            Op.Divide => Divide(o),
            Op.Sum => Sum([.. o.Of.Select(e => (Write(e), e.Value))], o),
            Op.Power => new($"{Write(o.Of[0]).Inside(Whole)}^{Write(o.Of[1]).Inside(Whole)}", Tight),
            Op.Exp => new($"exp({Write(o.Of[0]).Text})", Whole),
            Op.Log => new($"ln({Write(o.Of[0]).Text})", Whole),
            Op.Root => new($"root({Write(o.Of[0]).Text})", Whole),
            Op.Size => new($"|{Write(o.Of[0]).Text}|", Whole),
            Op.Larger => new($"larger({Both(o)})", Whole),
            Op.Smaller => new($"smaller({Both(o)})", Whole),
            Op.Cover => new($"up({Divide(o).Text})", Whole),
            Op.Fit => new($"down({Divide(o).Text})", Whole),
            Op.Nearest => new($"nearest({Divide(o).Text})", Whole),
            Op.NextSize => new($"next {((Leaf)o.Of[1]).Name}({Write(o.Of[0]).Text})", Whole),
            _ => Pack(o),
        };

        private Piece Divide(Operation o) => new($"{Write(o.Of[0]).Inside(Tight)} / {Write(o.Of[1]).Inside(Whole)}", Tight);

        private string Both(Operation o) => $"{Write(o.Of[0]).Text}, {Write(o.Of[1]).Text}";

        /// <summary>Pieces of stock: by their formula in names, by their lengths in numbers.</summary>
        private Piece Pack(Operation o)
        {
            var pieces = o.Of.Skip(1).Where(p => p.Value > 0).OrderByDescending(p => p.Value)
                .Select(p => (units is null ? Write(p) : new Piece(units.Show(p.Value, p.Unit), Whole), p.Value)).ToList();
            var text = pieces.Count == 0 ? "nothing" : Grouped(pieces, ", ", o).Text;
            return new($"packed({text} into {Write(o.Of[0]).Text})", Whole);
        }

        private Piece Sum(List<(Piece Piece, double Value)> terms, Operation o) => Grouped(terms, " + ", o);

        /// <summary>Equal terms once with their number; past a limit the rest in one.</summary>
        private Piece Grouped(List<(Piece Piece, double Value)> terms, string between, Operation o)
        {
            var groups = terms.GroupBy(t => t.Piece).Select(g => (g.Key, Count: g.Count(), Value: g.Sum(t => t.Value))).ToList();
            List<string> texts = [.. groups.Take(MostTerms).Select(g => g.Count == 1 ? g.Key.Text : $"{g.Count} x {g.Key.Inside(Whole)}")];
            var rest = groups.Skip(MostTerms).ToList();
            if (rest.Count > 0) texts.Add($"{rest.Sum(r => r.Count)} more{Amount(rest.Sum(r => r.Value), o)}");
            return new(string.Join(between, texts), texts.Count == 1 ? groups[0].Count == 1 ? groups[0].Key.Binding : Tight : Loose);
        }

        private string Amount(double value, Operation o) => units is null ? "" : $" ({units.Show(value, o.Of[^1].Unit)} together)";

        private static string Constant(double value)
            => Math.Abs(value - Math.PI) < 1e-12 ? "pi" : value.ToString("0.######", CultureInfo.InvariantCulture);
    }
}
