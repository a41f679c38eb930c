using System.Globalization;
using Tautline.Engine.Fabric;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Field.Cards;

namespace Tautline.Field.Bench;

/// <summary>Puts what was typed into the formulas and the answers into words.</summary>
internal static class BenchSums
{
    private const int MostMarks = 200;
    private const double CubicFoot = 0.3048 * 0.3048 * 0.3048;
    private const double Litre = 0.001;

    public static IReadOnlyList<BenchLine> Of(string sum, BenchReading read, UnitSystem units) => sum switch
    {
        "bays" => Bays(read, units),
        "slope" => Slope(read, units),
        "bias" => Bias(read, units, BenchFormulas.Mismatch(read["height", "fabric height"], read["slope", "slope"]), read.Value("slope") > 0 ? LongEdge.Bottom : LongEdge.Top),
        "cut" => Bias(read, units, Traced.Size(read["top", "top reading"] - read["bottom", "bottom reading"]), read.Value("top") > read.Value("bottom") ? LongEdge.Bottom : LongEdge.Top),
        "concrete" => Concrete(read, units),
        "square" or "rod" => [Length("diagonal", BenchFormulas.Diagonal(read["a", "one side"], read["b", "other side"]), units)],
        "gate" => Gate(read, units),
        "rail" => [Length("rail", BenchFormulas.Rail(read["centres", "post to post, centres"], read["first", "first post"], read["second", "second post"]), units, 16)],
        _ => Converted(new Length(read.Value("length"))),
    };

    private static List<BenchLine> Bays(BenchReading read, UnitSystem units)
    {
        var (span, most) = (read["span", "span"], read["most", "largest bay"]);
        var bays = BenchFormulas.Bays(span, most);
        if (bays.Value > MostMarks)
        {
            read.Refuse("most", "That makes more than 200 bays. Take the run in parts.");
            return [];
        }
        var n = (int)bays.Value;
        // Each mark is rounded from the start of the tape, so that what is rounded does not add up.
        var marks = Enumerable.Range(1, n).Select(i => TapeMark.Text(new Length(span.Value * i / n), units));
        return [Line("bays", bays, units), Length("bay", BenchFormulas.Bay(span, bays), units), new("marks", string.Join(", ", marks))];
    }

    private static List<BenchLine> Slope(BenchReading read, UnitSystem units)
    {
        var (rise, run) = (read["rise", "rise"], read["run", "run"]);
        var slope = BenchFormulas.Slope(rise, run);
        return
        [
            new("slope", SlopeText.Percent(new Slope(slope.Value), 1), Symbols(slope), Numbers(slope, units)), new("degrees", $"{Fixed(Trig.AtanDegrees(slope.Value), 1)}°"),
            new("oneIn", $"1 : {Fixed(1 / slope.Value, 1)}"), Length("along", BenchFormulas.Along(rise, run), units),
        ];
    }

    private static List<BenchLine> Bias(BenchReading read, UnitSystem units, Traced mismatch, LongEdge edge)
    {
        var advance = BenchFormulas.Advance(read["ten", "over ten pickets"]);
        var columns = BenchFormulas.Columns(mismatch, advance);
        var rows = (int)read.Value("diamonds");
        if (rows > 200 || columns.Value > 200 || !Engine.Fabric.Bias.IsCuttable((int)columns.Value, rows))
        {
            read.Refuse("diamonds", "So steep a cut steps over more than once in half a diamond: the fence is stepped there, or the readings are wrong.");
            return [];
        }
        var cut = Engine.Fabric.Bias.Cut(new Length(mismatch.Value), edge, new Length(advance.Value), rows);
        List<BenchLine> lines = [Length("mismatch", mismatch, units, 8), Length("advance", advance, units, 16), Line("columns", columns, units)];
        if (cut.Dressed) return [.. lines, new("dressed", "")];
        return [.. lines, new("crossings", string.Join(", ", cut.Crossings.Select(c => c.ToString("0.#", CultureInfo.InvariantCulture)))), new("out", rows.ToString(CultureInfo.InvariantCulture))];
    }

    private static List<BenchLine> Concrete(BenchReading read, UnitSystem units)
    {
        if (read.Value("post") >= read.Value("hole")) read.Refuse("post", "The post is no thinner than its hole.");
        if (read.Value("over") is < 0 or > 2) read.Refuse("over", "Over-break is what the ground broke out besides, 0 to 200 %.");
        var (litres, part) = (units == UnitSystem.Metric, units == UnitSystem.Metric ? Litre : CubicFoot);
        var one = BenchFormulas.Concrete(read["hole", "hole"], read["post", "post"], read["depth", "depth"], read["over", "over-break"]);
        var bags = BenchFormulas.Bags(one, Traced.Given("yield of a bag", read.Value("yield") * part, one.Expr.Unit));
        var holes = read.Value("holes");
        var all = one.Value * holes;
        return
        [
            new("oneHole", $"{Fixed(one.Value / part, 2)} {(litres ? "L" : "cu ft")}", Symbols(one), Numbers(one, units)), Line("bagsHole", bags, units), new("bagsAll", Fixed(bags.Value * holes, 0)),
            new("readyMix", litres ? $"{Fixed(all, 2)} m³" : $"{Fixed(all / (27 * CubicFoot), 2)} cu yd"),
        ];
    }

    private static List<BenchLine> Gate(BenchReading read, UnitSystem units)
    {
        if (read.Value("deduct") >= read.Value("opening")) read.Refuse("deduct", "Hinges, latch and gaps take less than the opening.");
        var opening = read["opening", "opening"];
        return
        [
            Length("leaf", BenchFormulas.Leaf(opening, read["deduct", "hinges, latch and gaps"], read["leaves", "leaves"]), units, 16),
            Length("centresOf", BenchFormulas.Centres(opening, read["post", "post"]), units, 16),
        ];
    }

    private static IReadOnlyList<BenchLine> Converted(Length length) =>
    [
        new("feetInches", LengthText.FeetInches(length, 16)), new("decimalFeet", LengthText.DecimalFeet(length, 3)), new("inches", LengthText.Inches(length, 16)),
        new("metres", LengthText.Metric(length)), new("millimetres", LengthText.Metric(length, LengthUnit.Millimetre, 0)),
    ];

    private static BenchLine Length(string key, Traced value, UnitSystem units, int denominator = 8) => new(
        key, units == UnitSystem.Metric ? LengthText.Metric(new(value.Value)) : LengthText.FeetInches(new(value.Value), denominator), Symbols(value), Numbers(value, units));

    private static BenchLine Line(string key, Traced value, UnitSystem units) => new(key, Fixed(value.Value, 0), Symbols(value), Numbers(value, units));

    private static string Symbols(Traced value) => ExprText.Symbols(value.Expr);

    private static string Numbers(Traced value, UnitSystem units) => ExprText.Numbers(value.Expr, units);

    private static string Fixed(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
