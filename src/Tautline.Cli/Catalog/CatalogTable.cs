using System.Globalization;
using System.Text.Json;
using Tautline.Cli.Output;
using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Cli.Catalog;

/// <summary>A cell of the catalogue: a word, a number with its unit, or several numbers.</summary>
internal readonly record struct Cell(string? Text, IReadOnlyList<double>? Values, Unit Unit)
{
    public static implicit operator Cell(string text) => new(text, null, Unit.Count);
    public static implicit operator Cell(Length length) => new(null, [length.Metres], Unit.Length);
    public static implicit operator Cell(LinearMass mass) => new(null, [mass.KilogramsPerMetre], Unit.LinearMass);

    public static Cell Lengths(IEnumerable<Length> lengths) => new(null, [.. lengths.Select(l => l.Metres)], Unit.Length);

    /// <summary>For people, in their units; sizes in inches or millimetres.</summary>
    public string Show(UnitSystem units)
    {
        var unit = Unit;
        return Text ?? string.Join(", ", Values!.Select(v => Show(v, unit, units)));
    }

    /// <summary>Whole feet from 4 ft on are said in feet.</summary>
    private static string Show(double value, Unit unit, UnitSystem units)
    {
        var feet = new Length(value).Feet;
        var whole = unit == Unit.Length && units == UnitSystem.UsCustomary && feet >= 4 - 1e-9 && Math.Abs(feet - Math.Round(feet)) < 1e-9;
        return whole ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(feet):#,0} ft") : ExprText.Value(value, unit, units);
    }

    public void Write(Utf8JsonWriter json)
    {
        if (Text is not null) json.WriteStringValue(Text);
        else if (Values!.Count == 1) json.WriteNumberValue(Values[0]);
        else
        {
            json.WriteStartArray();
            foreach (var value in Values) json.WriteNumberValue(value);
            json.WriteEndArray();
        }
    }
}

/// <summary>One part of the catalogue as rows and columns; the source comes last.</summary>
internal sealed record CatalogTable(string Title, IReadOnlyList<string> Columns, IReadOnlyList<(IReadOnlyList<Cell> Cells, Provenance From)> Rows)
{
    public static CatalogTable Of(CatalogPart part, FenceCatalog catalog, Rules rules) => part switch
    {
        CatalogPart.Fabrics => new(
            "Fabrics: mesh is the clear opening between parallel wires", ["mesh", "gauge", "wire", "heights"],
            [.. catalog.Fabrics.Select(f => Row(f.From, f.Mesh, f.Gauge, f.Wire, Cell.Lengths(f.Heights)))]),
        CatalogPart.Sections => new(
            "Sections: round pipe", ["id", "group", "tradeSize", "outsideDiameter", "wall", "weight"],
            [.. catalog.Sections.Select(s => Row(s.From, s.Id, s.Group, s.TradeSize, s.OutsideDiameter, s.Wall, s.Weight))]),
        CatalogPart.GatePosts => new(
            "Gate posts by the width of one leaf, for fences over one height and up to another",
            ["fenceOver", "fenceTo", "leafTo", "outsideDiameter", "holeDiameter", "holeDepth"],
            [.. catalog.GatePosts.Select(g => Row(g.From, g.FenceOver, Top(g.FenceTo), g.LeafTo, g.OutsideDiameter, Asked(g.HoleDiameter), Asked(g.HoleDepth)))]),
        CatalogPart.Posts => new(
            "Posts usually taken up to a height; no proof that the fence stands", ["heightTo", "linePost", "terminalPost"],
            [.. catalog.PostSizes.Select(p => Row(p.From, p.HeightTo, p.LinePost, p.TerminalPost))]),
        CatalogPart.Parts => new("Parts", ["id", "name"], [.. catalog.Parts.Select(p => Row(p.From, p.Id, p.Name))]),
        _ => RulesOf(rules),
    };

    private static CatalogTable RulesOf(Rules rules) => new(
        $"Rules of the set '{rules.Name}': {rules.Title}", ["key", "value", "condition"],
        [
            .. rules.All.Select(l => Row(l.From, l.Key, new Cell(null, [l.Value], l.Unit), l.Condition)),
            Row(rules.Augers.From, rules.Augers.Name, new Cell(null, rules.Augers.Sizes, Unit.Length), "hole diameters that are made"),
        ]);

    private static (IReadOnlyList<Cell>, Provenance) Row(Provenance from, params Cell[] cells) => (cells, from);

    /// <summary>A row without an upper limit carries a height no fence has.</summary>
    private static Cell Top(Length height) => height.Feet > 100 ? "any" : height;

    private static Cell Asked(Length size) => size.Metres > 0 ? size : "by rule";
}
