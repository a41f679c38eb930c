using Tautline.Documents.Words;
using Tautline.Engine.Catalog;
using Tautline.Engine.Plans;

namespace Tautline.Desk;

/// <summary>A row of the catalogue that was searched for.</summary>
public sealed record CatalogHit(string Name, string Text, string Source)
{
    /// <summary>Rows in which every word of the text is found; all where there is none.</summary>
    public static IReadOnlyList<CatalogHit> Search(FenceCatalog catalog, string text, PlanWords words, Phrases say)
    {
        string[] wanted = text.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return [.. All(catalog, words, say).Where(h => wanted.All(w => $"{h.Name} {h.Text} {h.Source}".Contains(w, StringComparison.OrdinalIgnoreCase)))];
    }

    private static IEnumerable<CatalogHit> All(FenceCatalog catalog, PlanWords words, Phrases say) =>
    [
        .. catalog.Fabrics.Select(f => new CatalogHit(
            say.Say("specs.fabricIs", ("mesh", words.Short(f.Mesh)), ("gauge", f.Gauge)), string.Join(", ", f.Heights.Select(words.Long)), SourceText.Text(f.From))),
        .. catalog.Sections.Select(s => new CatalogHit(s.Id, $"{s.Group}, {words.Short(s.OutsideDiameter)}", SourceText.Text(s.From))),
        .. catalog.Parts.Select(p => new CatalogHit(say.Or("part." + p.Id, p.Name), p.Id, SourceText.Text(p.From))),
    ];
}
