using Tautline.Engine.Quantities;

namespace Tautline.Field.Bench;

/// <summary>How an input is written.</summary>
public enum BenchKind
{
    /// <summary>A length; feet or metres where no unit is written.</summary>
    Length,

    /// <summary>A small length; inches or millimetres where no unit is written.</summary>
    Size,

    /// <summary>'12%', '0.12', '1 in 8', '7 deg'.</summary>
    Slope,
    Number,
    Whole,
}

/// <param name="Us">What stands in it at first, in US customary units.</param>
/// <param name="Metric">The same in metric units.</param>
public sealed record BenchInput(string Key, BenchKind Kind, string Us, string Metric);

/// <summary>One line of an answer.</summary>
/// <param name="Formula">In names; empty where nothing is worked out.</param>
/// <param name="Numbers">The same with the numbers put in.</param>
public sealed record BenchLine(string Key, string Value, string Formula = "", string Numbers = "");

/// <summary>Something that was typed and is no measure of its kind.</summary>
public sealed record BenchFault(string Input, string Message);

/// <param name="Lines">None while a fault stands.</param>
public sealed record BenchAnswer(IReadOnlyList<BenchLine> Lines, IReadOnlyList<BenchFault> Faults);

public sealed record BenchSum(string Key, IReadOnlyList<BenchInput> Inputs);

/// <summary>The sums there are. Nothing of them needs a job.</summary>
public static class BenchBook
{
    public static IReadOnlyList<BenchSum> All { get; } =
    [
        new("bays", [new("span", BenchKind.Length, "100'", "30 m"), new("most", BenchKind.Length, "10'", "3 m")]),
        new("slope", [new("rise", BenchKind.Length, "1'", "0.3 m"), new("run", BenchKind.Length, "8'", "2.4 m")]),
        new("bias", [new("height", BenchKind.Size, "72\"", "1800 mm"), new("slope", BenchKind.Slope, "25%", "25%"), new("ten", BenchKind.Size, "14\"", "356 mm"), new("diamonds", BenchKind.Whole, "24", "24")]),
        new("cut", [new("top", BenchKind.Size, "30\"", "760 mm"), new("bottom", BenchKind.Size, "25.8\"", "655 mm"), new("ten", BenchKind.Size, "14\"", "356 mm"), new("diamonds", BenchKind.Whole, "24", "24")]),
        new("concrete", [new("holes", BenchKind.Whole, "10", "10"), new("hole", BenchKind.Size, "10\"", "250 mm"), new("post", BenchKind.Size, "2.375\"", "60.3 mm"), new("depth", BenchKind.Size, "36\"", "900 mm"), new("over", BenchKind.Slope, "10%", "10%"), new("yield", BenchKind.Number, "0.6", "17")]),
        new("square", [new("a", BenchKind.Length, "3'", "3 m"), new("b", BenchKind.Length, "4'", "4 m")]),
        new("rod", [new("a", BenchKind.Length, "10'", "3 m"), new("b", BenchKind.Length, "5'", "1.5 m")]),
        new("gate", [new("opening", BenchKind.Length, "12'", "3.6 m"), new("deduct", BenchKind.Size, "6.5\"", "165 mm"), new("leaves", BenchKind.Whole, "2", "2"), new("post", BenchKind.Size, "2.875\"", "73 mm")]),
        new("rail", [new("centres", BenchKind.Length, "10'", "3 m"), new("first", BenchKind.Size, "2.375\"", "60.3 mm"), new("second", BenchKind.Size, "1.9\"", "48.3 mm")]),
        new("convert", [new("length", BenchKind.Length, "12' 6 1/2\"", "3.823 m")]),
    ];

    /// <summary>Never throws for what was typed: everything that is wrong is told together.</summary>
    /// <param name="typed">By the key of the input; one left out has what stands in it at first.</param>
    public static BenchAnswer Answer(string sum, IReadOnlyDictionary<string, string> typed, UnitSystem units)
    {
        var read = new BenchReading(All.First(s => s.Key == sum), typed, units);
        return read.Faults.Count > 0 ? new([], read.Faults) : BenchSums.Of(sum, read, units) is var lines && read.Faults.Count > 0 ? new([], read.Faults) : new(lines, []);
    }
}
