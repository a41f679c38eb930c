namespace Tautline.Engine.Site.TapeBook;

/// <summary>Names for the things of a job, each used once: its own name, its id where it has none, numbered where two agree.</summary>
internal sealed class TapeNames
{
    private readonly HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string> byId = new(StringComparer.Ordinal);

    public string Give(string id, string name)
    {
        var plain = string.IsNullOrWhiteSpace(name) ? id : name;
        var given = plain;
        for (var i = 2; !taken.Add(given); i++) given = $"{plain} ({i})";
        byId.TryAdd(id, given);
        return given;
    }

    public string? Find(string id) => byId.GetValueOrDefault(id);
}
