using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Tautline.Engine.Jobs;

namespace Tautline.Field.Merging;

/// <summary>
/// A job as a flat list of fields by path: 'gates/g1/opening', 'lines/l1/vertices/v2/east+north'. Things with an id are entities: each has a path of its own with the
/// empty value, and fields beneath. Fields that only make sense together are one. Whatever else is a list, and the measured ground, is one field.
/// </summary>
public static class JobFlat
{
    /// <summary>The value of an entity's own path.</summary>
    public const string There = "";

    private static readonly Dictionary<string, string> keyed = new(StringComparer.Ordinal) { ["asSpecified"] = "rule", ["calibrations"] = "spec" };

    private static readonly Dictionary<string, string[][]> together = new(StringComparer.Ordinal)
    {
        ["vertices"] = [["east", "north"]],
        ["gates"] = [["leg", "nearFace"]],
        ["obstacles"] = [["leg", "from", "to"]],
        ["works"] = [["leg", "from", "to"]],
        ["pins"] = [["leg", "at"]],
        ["hangs"] = [["leg", "at"]],
    };

    /// <summary>The fields in the order of the document.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Of(Job job)
    {
        using var document = JsonDocument.Parse(JobFile.Write(job));
        List<KeyValuePair<string, string>> fields = [];
        Object(document.RootElement, "", "", fields);
        return fields;
    }

    /// <summary>A job from its fields. Entities stand in the order given by <paramref name="rank"/>; fields of an entity that is not there are left out.</summary>
    public static JobReading Job(IReadOnlyDictionary<string, string> fields, Func<string, int> rank)
    {
        var root = new JsonObject();
        Dictionary<string, JsonObject> objects = new(StringComparer.Ordinal) { [""] = root };
        foreach (var path in fields.Where(f => f.Value == There).Select(f => f.Key).OrderBy(p => p.Count(c => c == '/')).ThenBy(rank)) Entity(path, objects);
        foreach (var (path, value) in fields.Where(f => f.Value != There).OrderBy(f => f.Key, StringComparer.Ordinal)) Put(path, value, objects);
        return JobFile.Read(Encoding.UTF8.GetBytes(root.ToJsonString()));
    }

    /// <summary>The path of the entity or object a path lies in; empty for the job.</summary>
    public static string Parent(string path) => path.LastIndexOf('/') is > 0 and var at ? path[..at] : "";

    private static void Object(JsonElement value, string path, string list, List<KeyValuePair<string, string>> fields)
    {
        var groups = together.GetValueOrDefault(list) ?? [];
        foreach (var group in groups) fields.Add(new(Under(path, string.Join('+', group)), Canonical.Text(value, group)));
        foreach (var part in value.EnumerateObject())
            if (!groups.Any(g => g.Contains(part.Name))) Field(part.Name, part.Value, Under(path, Escape(part.Name)), path, fields);
    }

    private static void Field(string name, JsonElement value, string path, string parent, List<KeyValuePair<string, string>> fields)
    {
        var ofJob = parent.Length == 0;
        if (value.ValueKind == JsonValueKind.Object && !(ofJob && name == "ground")) Object(value, path, "", fields);
        else if (value.ValueKind == JsonValueKind.Array && value.GetArrayLength() == 0) return;
        else if (value.ValueKind != JsonValueKind.Array || Key(name, value, ofJob) is not { } key) fields.Add(new(path, Canonical.Text(value)));
        else
            foreach (var item in value.EnumerateArray())
            {
                var at = Under(path, "@" + key + "=" + Escape(item.GetProperty(key).GetString()!));
                fields.Add(new(at, There));
                Object(item, at, name, fields);
            }
    }

    /// <summary>What names the things of a list; nothing where they have no names, or one name twice.</summary>
    private static string? Key(string name, JsonElement list, bool ofJob)
    {
        var key = ofJob && keyed.TryGetValue(name, out var own) ? own : "id";
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var item in list.EnumerateArray())
            if (item.ValueKind != JsonValueKind.Object || !item.TryGetProperty(key, out var id) || id.ValueKind != JsonValueKind.String || !seen.Add(id.GetString()!)) return null;
        return key;
    }

    private static void Entity(string path, Dictionary<string, JsonObject> objects)
    {
        var list = Parent(path);
        if (Owner(Parent(list), objects) is not { } owner) return;
        var name = Unescape(list[(list.LastIndexOf('/') + 1)..]);
        if (owner[name] is not JsonArray array) owner[name] = array = [];
        JsonObject made = [];
        array.Add((JsonNode)made);
        objects[path] = made;
    }

    private static void Put(string path, string value, Dictionary<string, JsonObject> objects)
    {
        if (Owner(Parent(path), objects) is not { } owner) return;
        var name = path[(path.LastIndexOf('/') + 1)..];
        if (!name.Contains('+', StringComparison.Ordinal)) owner[Unescape(name)] = JsonNode.Parse(value);
        else
            foreach (var (part, node) in JsonNode.Parse(value)!.AsObject().ToList()) owner[part] = node?.DeepClone();
    }

    /// <summary>The object at a path, made where it is a plain one; nothing where it lies in an entity that is not there.</summary>
    private static JsonObject? Owner(string path, Dictionary<string, JsonObject> objects)
    {
        if (objects.TryGetValue(path, out var known)) return known;
        var name = path[(path.LastIndexOf('/') + 1)..];
        if (name.StartsWith('@') || Owner(Parent(path), objects) is not { } parent) return null;
        JsonObject made = [];
        parent[Unescape(name)] = made;
        return objects[path] = made;
    }

    private static string Under(string path, string name) => path.Length == 0 ? name : $"{path}/{name}";

    private static string Escape(string name)
        => name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal).Replace("+", "~2", StringComparison.Ordinal).Replace("@", "~3", StringComparison.Ordinal);

    private static string Unescape(string name)
        => name.Replace("~3", "@", StringComparison.Ordinal).Replace("~2", "+", StringComparison.Ordinal).Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
}
