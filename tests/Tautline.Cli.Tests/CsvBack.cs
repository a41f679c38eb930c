namespace Tautline.Cli.Tests;

/// <summary>Reads CSV by RFC 4180 on its own, as a spreadsheet would.</summary>
internal static class CsvBack
{
    public static List<Dictionary<string, string>> Rows(string text)
    {
        var lines = Lines(text);
        return [.. lines.Skip(1).Select(l => lines[0].Zip(l).ToDictionary(p => p.First, p => p.Second))];
    }

    public static List<List<string>> Lines(string text)
    {
        List<List<string>> lines = [[]];
        var cell = "";
        var quoted = false;
        for (var i = 0; i < text.Length; i++)
            if (quoted && text[i] == '"' && i + 1 < text.Length && text[i + 1] == '"') cell += text[i++];
            else if (text[i] == '"') quoted = !quoted;
            else if (quoted || text[i] is not (',' or '\r' or '\n')) cell += text[i];
            else if (text[i] != '\r')
            {
                lines[^1].Add(cell);
                cell = "";
                if (text[i] == '\n') lines.Add([]);
            }
        Assert.Empty(lines[^1]);
        return lines[..^1];
    }
}
