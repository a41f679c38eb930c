using System.Globalization;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

public static partial class HangWords
{
    /// <summary>A diagnosis of fabric, a sentence each: stretch, height, squeeze.</summary>
    public static IReadOnlyList<string> Mesh(MeshReading reading, UnitSystem units)
    {
        var words = new PlanWords(units);
        List<string> lines = [];
        if (reading.Changes.Count > 0) lines.AddRange(Stretch(reading, words));
        lines.Add(Squeeze(reading, words));
        return lines;
    }

    private static IEnumerable<string> Stretch(MeshReading r, PlanWords words)
    {
        yield return r.StretchLow < 0 && r.StretchHigh > 0
            ? $"Against as delivered the fabric is anything from {Percent(-r.StretchLow)} shorter to {Percent(r.StretchHigh)} longer, and from {words.Short(-1 * r.LostLow)} taller to {words.Short(r.LostHigh)} lower."
            : r.StretchHigh <= 0
            ? $"Against as delivered the fabric is {Between(Percent(-r.StretchHigh), Percent(-r.StretchLow))} shorter and {Between(words.Short(-1 * r.LostHigh), words.Short(-1 * r.LostLow))} taller: it was pushed together, or its roll was not measured."
            : $"Against as delivered the fabric is {Between(Percent(r.StretchLow), Percent(r.StretchHigh))} longer and {Between(words.Signed(r.LostLow), words.Signed(r.LostHigh))} lower.";
        if (!r.Decided) yield return "Whether it is stretched cannot be told: the mesh as delivered is only a range. Measure ten pickets of the roll before it is hung.";
        yield return "A diagnosis only: specifications forbid distorting the diamonds or reducing the height (UFGS-02821A, 3.7). Where height is lost, slacken the pull.";
    }

    private static string Squeeze(MeshReading r, PlanWords words)
    {
        var range = $"{words.Short(r.SqueezeLow)} to {words.Short(r.SqueezeHigh)} between two pinched wires (common practice, verify)";
        return r.Squeezed switch
        {
            Squeezed.BarTight => $"Bar-tight: right is {range}.",
            Squeezed.Slack => $"Slack: right is {range}.",
            Squeezed.Good => $"Tight enough: {range}.",
            _ => $"Squeeze test: {range}.",
        };
    }

    private static string Percent(double share) => (share * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %";

    private static string Between(string low, string high) => low == high ? low : $"{low} to {high}";
}
