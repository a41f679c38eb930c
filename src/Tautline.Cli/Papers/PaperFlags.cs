using System.CommandLine;
using System.CommandLine.Parsing;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;

namespace Tautline.Cli.Papers;

/// <summary>The flags of every command that prints.</summary>
internal static class PaperFlags
{
    private static readonly Dictionary<string, PaperSize> sizes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["letter"] = PaperSize.Letter,
        ["a4"] = PaperSize.A4,
        ["tabloid"] = PaperSize.Tabloid,
        ["a3"] = PaperSize.A3,
        ["ansi-d"] = PaperSize.AnsiD,
        ["arch-d"] = PaperSize.ArchD,
        ["a1"] = PaperSize.A1,
    };

    public static Option<string> Language() => new("--lang")
    {
        Description = "en or es, the language of the paper.",
        HelpName = "en|es",
        DefaultValueFactory = _ => Phrases.English,
        CustomParser = ReadLanguage,
    };

    public static Option<PaperSize?> Size() => new("--size")
    {
        Description = "Size of the paper; otherwise letter, or a4 for a metric job.",
        HelpName = string.Join('|', sizes.Keys),
        CustomParser = ReadSize,
    };

    private static string? ReadLanguage(ArgumentResult result)
    {
        string text = result.Tokens[0].Value;
        if (Phrases.Languages.Contains(text)) return text;
        result.AddError($"--lang cannot be '{text}': write {string.Join(" or ", Phrases.Languages)}.");
        return null;
    }

    private static PaperSize? ReadSize(ArgumentResult result)
    {
        string text = result.Tokens[0].Value;
        if (sizes.TryGetValue(text, out PaperSize size)) return size;
        result.AddError($"--size cannot be '{text}': write {string.Join(", ", sizes.Keys)}.");
        return null;
    }
}
