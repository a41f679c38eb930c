namespace Tautline.Papers.Paper.Layout;

/// <summary>Breaks text into lines that fit a width: at spaces, and inside a word only where one word is too long alone.</summary>
internal sealed class LineBreaker(TextMeasure measure)
{
    /// <summary>At least one line, none wider than <paramref name="width"/> unless a single character is.</summary>
    public IReadOnlyList<string> Break(string text, TextStyle style, double width)
    {
        var lines = new List<string>();
        foreach (string paragraph in text.ReplaceLineEndings("\n").Split('\n'))
            BreakParagraph(measure.Printable(paragraph, style), style, width, lines);
        return lines;
    }

    /// <summary>The width below which a word of the text would have to be cut.</summary>
    public double LongestWord(string text, TextStyle style) =>
        text.ReplaceLineEndings(" ").Split(' ').Max(word => measure.Width(word, style));

    private void BreakParagraph(string paragraph, TextStyle style, double width, List<string> lines)
    {
        string line = "";
        foreach (string word in paragraph.Split(' '))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (measure.Width(longer, style) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
                lines.Add(line);
            line = CutToWidth(word, style, width, lines);
        }

        lines.Add(line);
    }

    private string CutToWidth(string word, TextStyle style, double width, List<string> lines)
    {
        while (measure.Width(word, style) > width)
        {
            int length = FittingLength(word, style, width);
            if (length == word.Length)
                break;
            lines.Add(word[..length]);
            word = word[length..];
        }

        return word;
    }

    private int FittingLength(string word, TextStyle style, double width)
    {
        int fitting = 0;
        for (int next = Step(word, 0); next <= word.Length; next = Step(word, next))
        {
            if (fitting > 0 && measure.Width(word[..next], style) > width)
                break;
            fitting = next;
            if (next == word.Length)
                break;
        }

        return fitting;
    }

    private static int Step(string word, int from) =>
        from + 1 < word.Length && char.IsSurrogatePair(word, from) ? from + 2 : from + 1;
}
