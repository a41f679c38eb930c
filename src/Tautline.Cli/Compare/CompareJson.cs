using System.Text.Json;
using Tautline.Cli.Output;
using Tautline.Engine.Catalog;
using Tautline.Engine.Comparison;
using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;

namespace Tautline.Cli.Compare;

/// <summary>A comparison as JSON: SI, limits in the unit they name.</summary>
internal static class CompareJson
{
    public static string Write(RuleComparison compared) => JsonText.Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("job", compared.A.Job.Value);
        json.WriteString("a", compared.A.RuleSet);
        json.WriteString("b", compared.B.RuleSet);
        List(json, "limits", compared.Limits, Limit);
        List(json, "figures", compared.Figures, Figure);
        List(json, "takeoff", compared.Takeoff, Takeoff);
        json.WriteEndObject();
    });

    private static void List<T>(Utf8JsonWriter json, string name, IEnumerable<T> rows, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var row in rows)
        {
            json.WriteStartObject();
            write(json, row);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Limit(Utf8JsonWriter json, LimitDifference limit)
    {
        json.WriteString("key", limit.Rule.Key);
        if (limit.Step is { UpTo: { } end }) json.WriteNumber("upTo", end);
        json.WriteString("unit", LimitText.SiUnit(limit.Rule));
        json.WriteBoolean("planned", limit.Planned);
        Side(json, "a", limit.A);
        Side(json, "b", limit.B);
    }

    private static void Side(Utf8JsonWriter json, string name, Limit? limit)
    {
        if (limit is null)
        {
            json.WriteNull(name);
            return;
        }
        json.WriteStartObject(name);
        json.WriteNumber("value", limit.Value);
        json.WriteString("set", limit.Set);
        json.WriteString("condition", limit.Condition);
        json.WriteString("source", limit.From.Source);
        json.WriteString("clause", limit.From.Clause);
        json.WriteString("edition", limit.From.Edition);
        json.WriteString("confidence", SourceText.Confidence(limit.From.Confidence));
        json.WriteBoolean("verify", limit.From.Verify);
        json.WriteEndObject();
    }

    private static void Figure(Utf8JsonWriter json, FigureDifference figure)
    {
        json.WriteString("figure", CompareText.Name(figure.Figure));
        json.WriteString("unit", figure.Unit == Unit.Length ? "m" : figure.Unit == Unit.Volume ? "m3" : "count");
        json.WriteBoolean("differs", figure.Differs);
        json.WriteNumber("a", figure.A);
        json.WriteNumber("b", figure.B);
    }

    private static void Takeoff(Utf8JsonWriter json, TakeoffDifference line)
    {
        json.WriteString("part", line.Item.Part);
        json.WriteString("name", line.Item.Name);
        if (line.Item.Section is { } section) json.WriteString("section", section);
        if (line.Item.Size is { } size) json.WriteNumber("size", size.Metres);
        if (line.Item.Spec is { } spec) json.WriteString("spec", spec.Value);
        Side(json, "a", line.A);
        Side(json, "b", line.B);
    }

    private static void Side(Utf8JsonWriter json, string name, TakeoffLine? line)
    {
        if (line is null)
        {
            json.WriteNull(name);
            return;
        }
        json.WriteStartObject(name);
        json.WriteNumber("net", line.Net);
        json.WriteNumber("purchase", line.Purchase);
        if (line.Mass is { } mass) json.WriteNumber("mass", mass.Kilograms);
        json.WriteEndObject();
    }
}
