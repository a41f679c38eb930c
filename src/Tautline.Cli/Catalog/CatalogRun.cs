using System.Text.Json;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Catalog;

internal static class CatalogRun
{
    public static ExitCode Run(CatalogOptions options, CliHost host)
    {
        var (rules, fault) = RulesSource.Load(options.Rules, RuleSets.BaseName);
        if (rules is null)
        {
            Messages.Show(host, [fault!]);
            return ExitCode.Unreadable;
        }
        var catalog = FenceCatalog.BuiltIn();
        var parts = options.Part is { } one ? [one] : Enum.GetValues<CatalogPart>();
        var tables = parts.Select(p => (p, CatalogTable.Of(p, catalog, rules))).ToList();
        host.Output.Write(options.Json ? JsonText.Write(json => Json(json, tables)) : Text(tables.Select(t => t.Item2), options.Units, host));
        return ExitCode.Fine;
    }

    private static string Text(IEnumerable<CatalogTable> tables, UnitSystem units, CliHost host)
    {
        var paper = Paper.For(host);
        foreach (var table in tables)
        {
            paper.Heading(table.Title);
            paper.Table(
                [.. table.Columns.Select(Spaced), .. table.Sourced ? ["source"] : Array.Empty<string>()],
                table.Rows.Select(r => Row(r.Cells, r.From, units)));
        }
        return paper.ToString();
    }

    private static IReadOnlyList<string> Row(IReadOnlyList<Cell> cells, Provenance? from, UnitSystem units)
        => [.. cells.Select(c => c.Show(units)), .. from is null ? [] : new[] { SourceText.Text(from) }];

    private static void Json(Utf8JsonWriter json, IEnumerable<(CatalogPart Part, CatalogTable Table)> tables)
    {
        json.WriteStartObject();
        foreach (var (part, table) in tables)
        {
            json.WriteStartArray(CatalogCommand.Name(part));
            foreach (var (cells, from) in table.Rows) Json(json, table.Columns, cells, from);
            json.WriteEndArray();
        }
        json.WriteEndObject();
    }

    private static void Json(Utf8JsonWriter json, IReadOnlyList<string> columns, IReadOnlyList<Cell> cells, Provenance? from)
    {
        json.WriteStartObject();
        for (var i = 0; i < cells.Count; i++)
        {
            json.WritePropertyName(columns[i]);
            cells[i].Write(json);
        }
        if (from is not null) Source(json, from);
        json.WriteEndObject();
    }

    private static void Source(Utf8JsonWriter json, Provenance from)
    {
        json.WriteString("source", from.Source);
        json.WriteString("clause", from.Clause);
        json.WriteString("edition", from.Edition);
        json.WriteString("confidence", SourceText.Confidence(from.Confidence));
        json.WriteBoolean("verify", from.Verify);
    }

    /// <summary>outside diameter for outsideDiameter.</summary>
    private static string Spaced(string name)
        => string.Concat(name.Select(c => char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"));
}
