using System.Globalization;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Field.Bench;

/// <summary>What was typed for a sum, in SI, each with its name so that the answer can say it.</summary>
internal sealed class BenchReading
{
    private readonly Dictionary<string, (double Value, Unit Unit)> values = [];
    private readonly List<BenchFault> faults = [];

    public BenchReading(BenchSum sum, IReadOnlyDictionary<string, string> typed, UnitSystem units)
    {
        foreach (var input in sum.Inputs)
            Read(input, typed.GetValueOrDefault(input.Key) ?? (units == UnitSystem.Metric ? input.Metric : input.Us), units);
    }

    public IReadOnlyList<BenchFault> Faults => faults;

    public Traced this[string key, string name] => Traced.Given(name, values[key].Value, values[key].Unit);

    public double Value(string key) => values[key].Value;

    public void Refuse(string key, string message) => faults.Add(new(key, message));

    private void Read(BenchInput input, string text, UnitSystem units)
    {
        if (input.Kind is BenchKind.Length or BenchKind.Size) Take(input.Key, LengthText.Parse(text, Bare(input.Kind, units)), l => l.Metres, Unit.Length);
        else if (input.Kind == BenchKind.Slope) Take(input.Key, SlopeText.Parse(text), s => s.Ratio, Unit.Ratio);
        else Number(input, text);
    }

    private static LengthUnit Bare(BenchKind kind, UnitSystem units) => (kind, units) switch
    {
        (BenchKind.Length, UnitSystem.Metric) => LengthUnit.Metre,
        (BenchKind.Size, UnitSystem.Metric) => LengthUnit.Millimetre,
        (BenchKind.Length, _) => LengthUnit.Foot,
        _ => LengthUnit.Inch,
    };

    private void Take<T>(string key, Parsed<T> read, Func<T, double> si, Unit unit)
    {
        if (!read.Ok) Refuse(key, $"{read.Problem.Message} {read.Problem.Hint}");
        else if (!(Math.Abs(si(read.Value)) < 100_000)) Refuse(key, "That is longer than any fence. Write a measure of this job.");
        else if (unit == Unit.Length && si(read.Value) <= 0) Refuse(key, "A measure is more than zero.");
        else values[key] = (si(read.Value), unit);
    }

    private void Number(BenchInput input, string text)
    {
        var fine = double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number is > 0 and < 100_000;
        if (!fine || (input.Kind == BenchKind.Whole && Math.Floor(number) < number)) Refuse(input.Key, input.Kind == BenchKind.Whole ? "Write a whole number from 1, such as 24." : "Write a number above zero, such as 0.6.");
        else values[input.Key] = (number, Unit.Count);
    }
}
