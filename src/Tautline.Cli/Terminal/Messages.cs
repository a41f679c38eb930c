using Tautline.Engine.Problems;

namespace Tautline.Cli.Terminal;

/// <summary>Words on the message stream: 'error: where: what' with a 'hint:' line.</summary>
internal static class Messages
{
    public static void Show(CliHost host, IEnumerable<Finding> findings)
    {
        foreach (var finding in findings) host.Error.Write(Text(finding, host));
    }

    public static void Error(CliHost host, string message, string hint = "")
        => Show(host, [new(Severity.Error, "", "", message, hint)]);

    public static void Note(CliHost host, string message, string hint = "")
        => Show(host, [new(Severity.Note, "", "", message, hint)]);

    /// <summary>Worst first; within a severity in the order found.</summary>
    public static IEnumerable<Finding> Ordered(IEnumerable<Finding> findings) => findings.OrderByDescending(f => f.Severity);

    /// <summary>'1 error, 2 warnings', or 'no problems'.</summary>
    public static string Tally(IReadOnlyList<Finding> findings)
    {
        var counts = findings.GroupBy(f => f.Severity).OrderByDescending(g => g.Key).Select(g => Count(g.Count(), Word(g.Key)));
        return findings.Count == 0 ? "no problems" : string.Join(", ", counts);
    }

    public static string Count(int count, string word)
        => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");

    public static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        Severity.Question => "question",
        _ => "note",
    };

    private static string Text(Finding finding, CliHost host)
    {
        var where = finding.Where.Length > 0 ? $"{finding.Where}: " : "";
        var hint = finding.Hint.Length > 0 ? $"{Coloured("hint", "36", host)}: {finding.Hint}\n" : "";
        return $"{Coloured(Word(finding.Severity), ColourOf(finding.Severity), host)}: {where}{finding.Message}\n{hint}";
    }

    private static string Coloured(string word, string colour, CliHost host)
        => host.ErrorIsTerminal && host.Colour ? $"\u001b[1;{colour}m{word}\u001b[0m" : word;

    private static string ColourOf(Severity severity) => severity switch
    {
        Severity.Error => "31",
        Severity.Warning or Severity.Question => "33",
        _ => "36",
    };
}
