using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>The specs of a book: those written out, and those made of one by another height.</summary>
internal sealed class TapeSpecs
{
    private readonly TapeIds ids = new();
    private readonly Dictionary<string, (Spec Spec, int Line)> named = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<(SpecId Root, long HeightNm), Spec> derived = [];
    private readonly Dictionary<SpecId, Spec> roots = [];
    private readonly List<Spec> all = [];

    public IReadOnlyList<Spec> All => all;

    /// <summary>How many the book writes out.</summary>
    public int Count => named.Count;

    public string Known => named.Count == 0 ? "none" : string.Join(", ", named.Values.Select(n => n.Spec.Name));

    /// <summary>The spec a line has that names none: the only one there is.</summary>
    public Spec? Only => named.Count == 1 ? named.Values.First().Spec : null;

    public Spec? Find(string name) => named.TryGetValue(name, out var found) ? found.Spec : null;

    /// <summary>Line of the book that writes a spec out.</summary>
    public int LineOf(string name) => named[name].Line;

    public SpecId NewId(string name) => new($"spec/{ids.Make(name, "spec")}");

    public void Add(Spec spec, int line)
    {
        named.Add(spec.Name, (spec, line));
        Add(spec, spec);
    }

    /// <summary>The spec with another height: itself, one made before, or a new one that keeps everything else.</summary>
    public Spec WithHeight(Spec spec, Length height, string shown)
    {
        var root = roots[spec.Id];
        var key = (root.Id, height.Nanometres);
        if (root.Height.Nanometres == height.Nanometres) return root;
        if (derived.TryGetValue(key, out var made)) return made;
        var name = $"{root.Name} {shown}";
        made = root with { Id = NewId(name), Name = name, Height = height };
        Add(made, root);
        return derived[key] = made;
    }

    private void Add(Spec spec, Spec root)
    {
        roots.Add(spec.Id, root);
        all.Add(spec);
    }
}
