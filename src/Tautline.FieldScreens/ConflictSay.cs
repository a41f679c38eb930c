using System.Globalization;
using System.Text.Json;
using Tautline.Desk;
using Tautline.Documents.Words;
using Tautline.Engine.Quantities;
using Tautline.Field.Merging;

namespace Tautline.FieldScreens;

/// <summary>What people disagree about, and the values it could have, in the words of the page: lengths as the job shows them.</summary>
public sealed class ConflictSay(Session session, Phrases say)
{
    private static readonly Dictionary<string, string> kinds = new(StringComparer.Ordinal)
    {
        ["specs"] = "spec",
        ["lines"] = "line",
        ["vertices"] = "vertex",
        ["legs"] = "leg",
        ["gates"] = "gate",
        ["obstacles"] = "obstacle",
        ["pins"] = "pin",
        ["works"] = "work",
        ["asSpecified"] = "limit",
    };

    /// <summary>'Gate office: opening'.</summary>
    public string What(Conflict conflict)
    {
        string things = string.Join(", ", JobFieldNames.Things(conflict.Path).Select(Thing));
        string fields = string.Join(", ", JobFieldNames.Fields(conflict.Path).Select(Field));
        return things.Length == 0 ? fields : fields.Length == 0 ? things : $"{things}: {fields}";
    }

    public string Value(Conflict conflict, string? value)
    {
        if (value is null) return say["field.gone"];
        if (value == JobFlat.There) return say["field.there"];
        using JsonDocument read = JsonDocument.Parse(value);
        return Text(JobFieldNames.Fields(conflict.Path)[0], read.RootElement, 0);
    }

    private string Thing((string List, string Name) thing)
        => thing.Name.Length == 0 ? say["conflict.leg"]
            : thing.List == "gates" ? say.Say("field.gate", ("id", thing.Name))
            : kinds.TryGetValue(thing.List, out string? kind) ? say.Say("what." + kind, ("id", thing.Name)) : $"{say.Or("conflict." + thing.List, thing.List)} {thing.Name}";

    private string Field(string name) => say.Or("conflict." + name, name);

    private string Text(string name, JsonElement value, int depth) => value.ValueKind switch
    {
        JsonValueKind.Number when JobFieldNames.Lengths.Contains(name) => session.Words.Long(new Length(value.GetDouble())),
        JsonValueKind.Number when JobFieldNames.Slopes.Contains(name) => $"{(value.GetDouble() * 100).ToString("0.##", CultureInfo.InvariantCulture)} %",
        JsonValueKind.String => value.GetString()!,
        JsonValueKind.True => say["yes"],
        JsonValueKind.False => say["no"],
        JsonValueKind.Object when depth < 2 => string.Join(", ", value.EnumerateObject().Select(p => $"{Field(p.Name)} {Text(p.Name, p.Value, depth + 1)}")),
        JsonValueKind.Object or JsonValueKind.Array => say["conflict.much"],
        _ => value.GetRawText(),
    };
}
