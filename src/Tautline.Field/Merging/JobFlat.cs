using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Tautline.Engine.Jobs;

namespace Tautline.Field.Merging;

/// <summary>
/// A job as a flat list of fields by path: 'gates/@id=g1/opening', 'lines/@id=l1/vertices/@id=v2/east+north'. Things with an id are entities, in a list or by themselves: each has
/// a path of its own with the empty value, and fields beneath. Fields that only make sense together are one, and so is any part without an id of its own, however much is in
/// it: half of one person's barb arms and half of another's are no barb arms. A list of things without ids is one field too.
/// </summary>
public static class JobFlat
{
    /// <summary>The value of an entity's own path.</summary>
    public const string There = "";

    private static readonly Dictionary<string, string> keyed = new(StringComparer.Ordinal) { ["asSpecified"] = "rule", ["calibrations"] = "spec" };

    // Lists that a job has by itself when they are empty; any other empty list or part is a later program's, and a field.
    private static readonly HashSet<string> lists = new(StringComparer.Ordinal)
    {
        "mustUnderstand", "asSpecified", "specs", "lines", "keeps", "shots", "remedies", "vertices", "gates", "obstacles", "calibrations", "pins", "works", "temporary", "stock", "seen", "hangs",
    };

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
        if (value.ValueKind == JsonValueKind.Object && Named(value))
        {
            fields.Add(new(path, There));
            Object(value, path, "", fields);
        }
        else if (value.ValueKind == JsonValueKind.Array && value.GetArrayLength() == 0 && lists.Contains(name)) return;
        else if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() == 0 || Key(name, value, parent.Length == 0) is not { } key) fields.Add(new(path, Canonical.Text(value)));
        else
            foreach (var item in value.EnumerateArray())
            {
                var at = Under(path, "@" + key + "=" + Escape(item.GetProperty(key).GetString()!));
                fields.Add(new(at, There));
                Object(item, at, name, fields);
            }
    }

    private static bool Named(JsonElement value) => value.TryGetProperty("id", out var id) && id.ValueKind == JsonValueKind.String;

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
        var name = Name(path);
        JsonObject made = [];
        if (!name.StartsWith('@'))
        {
            if (!objects.TryGetValue(Parent(path), out var around)) return;
            around[Unescape(name)] = made;
        }
        else
        {
            var list = Parent(path);
            if (!objects.TryGetValue(Parent(list), out var owner)) return;
            if (owner[Unescape(Name(list))] is not JsonArray array) owner[Unescape(Name(list))] = array = [];
            array.Add((JsonNode)made);
            // What a thing is called its path says: nothing written beneath it can make it another.
            var named = name.IndexOf('=', StringComparison.Ordinal);
            made[name[1..named]] = Unescape(name[(named + 1)..]);
        }
        objects[path] = made;
    }

    /// <summary>A field of a thing that is not there is left out, and one beneath a part that is no thing of its own.</summary>
    private static void Put(string path, string value, Dictionary<string, JsonObject> objects)
    {
        if (!objects.TryGetValue(Parent(path), out var owner)) return;
        var name = Name(path);
        if (name.Contains('+', StringComparison.Ordinal))
            foreach (var (part, node) in JsonNode.Parse(value)!.AsObject().ToList()) owner[part] = node?.DeepClone();
        else if (!Fixed(path) && owner[Unescape(name)] is not (JsonArray { Count: > 0 } or JsonObject)) owner[Unescape(name)] = JsonNode.Parse(value);
    }

    /// <summary>True for the field that names the thing it lies in.</summary>
    internal static bool Fixed(string path) => Name(Parent(path)) is { Length: > 0 } thing && thing.StartsWith('@') && thing[1..].StartsWith(Name(path) + "=", StringComparison.Ordinal);

    /// <summary>True where a path can be one of a job's: names between slashes, and of a thing in a list what names it.</summary>
    internal static bool Sound(string path)
        => path.Length > 0 && path.Split('/') is var names && names.All(n => n.Length > 0 && (!n.StartsWith('@') || n.IndexOf('=', StringComparison.Ordinal) > 1)) && !names[0].StartsWith('@')
            && names.Zip(names.Skip(1)).All(n => !n.First.StartsWith('@') || !n.Second.StartsWith('@'));

    /// <summary>True for a path whose value is a thing that is there or not.</summary>
    internal static bool OfListed(string path) => Name(path).StartsWith('@');

    /// <summary>True for fields that are one because they only make sense together; their value is an object.</summary>
    internal static bool OfGroup(string path) => Name(path).Contains('+', StringComparison.Ordinal);

    private static string Name(string path) => path[(path.LastIndexOf('/') + 1)..];

    private static string Under(string path, string name) => path.Length == 0 ? name : $"{path}/{name}";

    private static string Escape(string name)
        => name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal).Replace("+", "~2", StringComparison.Ordinal).Replace("@", "~3", StringComparison.Ordinal);

    internal static string Unescape(string name)
        => name.Replace("~3", "@", StringComparison.Ordinal).Replace("~2", "+", StringComparison.Ordinal).Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
}
