using System.Collections.Immutable;
using Tautline.Formats.Sites.Reading;
using Tautline.Formats.Sites.Xml;

namespace Tautline.Formats.Sites.Texts;

/// <summary>
/// Positions pasted from a map or a phone, one a line: "44.0570 N, 123.0699 W", "N44 03.42 W123 04.19", "44°03'25.2"N 123°04'11.6"W". Only lines with the letters of both
/// hemispheres count: without them nobody can tell which number is which.
/// </summary>
internal static class LatLonText
{
    /// <summary>True where most lines that hold numbers are such positions; they are then taken, the others told.</summary>
    public static bool Read(ImmutableArray<string> lines, SiteCollector found)
    {
        var sample = lines.Where(l => l.Any(char.IsAsciiDigit)).Take(50).ToList();
        if (sample.Count == 0 || sample.Count(l => Parse(l) is not null) * 2 <= sample.Count) return false;
        for (var i = 0; i < lines.Length; i++)
        {
            if (Parse(lines[i]) is { } place)
                found.Point(new() { Number = found.NextNumber(), Kind = "position", Label = place.Label, Vertices = [place.Vertex], Line = i + 1 });
            else if (lines[i].Any(char.IsAsciiDigit))
            {
                found.Problems.AddAtLine(TextFindings.NoPosition, i + 1);
                found.Skip("line", "no position");
            }
        }
        return true;
    }

    private sealed record Angle(char Letter, List<double> Numbers);

    /// <summary>The position of a line; null where it is none.</summary>
    public static (SiteVertex Vertex, string Label)? Parse(string line)
    {
        if (line.Length > 400) return null;
        var (words, letters) = Words(line);
        if (letters.Count != 2) return null;
        // The letter stands before its numbers, or behind them.
        var before = letters[0] < words.FindIndex(w => double.IsFinite(w.Number));
        List<Angle> angles = [];
        for (var k = 0; k < 2; k++)
        {
            var (from, to) = before ? (letters[k] + 1, k == 0 ? letters[1] : words.Count) : (k == 0 ? 0 : letters[0] + 1, letters[k]);
            var numbers = words[from..to].Where(w => double.IsFinite(w.Number)).Select(w => w.Number).ToList();
            angles.Add(new(char.ToUpperInvariant(words[letters[k]].Text[0]), numbers));
        }
        double? latitude = Degrees(angles.Find(a => a.Letter is 'N' or 'S')), longitude = Degrees(angles.Find(a => a.Letter is 'E' or 'W'));
        if (latitude is not { } y || longitude is not { } x || Math.Abs(y) > 90 || Math.Abs(x) > 180) return null;
        return (new(x, y), string.Join(' ', words.Where(w => double.IsNaN(w.Number) && w.Text.Length > 1).Select(w => w.Text)));
    }

    /// <summary>One, two or three numbers: degrees, minutes, seconds; only the last may have a fraction.</summary>
    private static double? Degrees(Angle? angle)
    {
        if (angle is not { Numbers: [var degrees, .. var rest] } || rest.Count > 2 || rest.Exists(r => r is < 0 or >= 60)) return null;
        if (rest.Count > 0 && (degrees != Math.Floor(degrees) || (rest.Count > 1 && rest[0] != Math.Floor(rest[0])))) return null;
        var size = Math.Abs(degrees) + (rest.Count > 0 ? rest[0] / 60 : 0) + (rest.Count > 1 ? rest[1] / 3600 : 0);
        return angle.Letter is 'S' or 'W' ? -size : degrees < 0 ? -size : size;
    }

    private static (List<(string Text, double Number)> Words, List<int> Letters) Words(string line)
    {
        List<(string, double)> words = [];
        List<int> letters = [];
        for (var i = 0; i < line.Length;)
        {
            if (char.IsAsciiDigit(line[i]) || (line[i] is '-' or '+' or '.' && i + 1 < line.Length && char.IsAsciiDigit(line[i + 1])))
            {
                var from = i++;
                while (i < line.Length && (char.IsAsciiDigit(line[i]) || line[i] == '.')) i++;
                words.Add(("", SiteXml.Parse(line.AsSpan(from, i - from))));
            }
            else if (char.IsLetter(line[i]))
            {
                var from = i++;
                while (i < line.Length && char.IsLetter(line[i])) i++;
                var text = line[from..i];
                if (text.Length == 1 && "NSEWnsew".Contains(text[0], StringComparison.Ordinal)) letters.Add(words.Count);
                words.Add((text, double.NaN));
            }
            else i++;
        }
        return (words, letters);
    }
}
