using System.CommandLine;
using System.CommandLine.Parsing;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Catalog;

internal static class CatalogCommand
{
    public static Command Define(CliHost host)
    {
        var part = new Argument<CatalogPart?>("PART")
        {
            Description = "fabrics, sections, gate-posts, posts, parts or rules; all of them if none is named.",
            HelpName = "PART",
            Arity = ArgumentArity.ZeroOrOne,
            CustomParser = ReadPart,
        };
        var json = Flags.Json("As JSON: metres, kilograms per metre, and rules in their SI unit.");
        var (rules, units) = (Flags.Rules(), Flags.Units());
        var command = new Command("catalog", "Lists what can be bought and the rules, each row with its source.") { part, json, rules, units };
        command.SetAction(p => (int)CatalogRun.Run(
            new CatalogOptions(p.GetValue(part), p.GetValue(rules), p.GetValue(json), p.GetValue(units) ?? default), host));
        return command;
    }

    public static string Name(CatalogPart part) => part == CatalogPart.GatePosts ? "gate-posts" : part.ToString().ToLowerInvariant();

    private static CatalogPart? ReadPart(ArgumentResult result)
    {
        if (result.Tokens.Count == 0) return null;
        var text = result.Tokens[0].Value;
        foreach (var part in Enum.GetValues<CatalogPart>())
            if (Name(part) == text) return part;
        result.AddError($"The catalogue has no part '{text}': write fabrics, sections, gate-posts, posts, parts or rules.");
        return null;
    }
}
