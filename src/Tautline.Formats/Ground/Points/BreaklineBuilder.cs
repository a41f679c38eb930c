using System.Collections.Immutable;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>Makes breaklines of rows by their codes, as <see cref="BreaklineCodes"/> says.</summary>
internal sealed class BreaklineBuilder(BreaklineCodes codes, List<SurveyPoint> points, ProblemList problems)
{
    private static readonly string[] Begins = ["B", "BEG", "BEGIN", "ST", "START"];
    private static readonly string[] Ends = ["E", "END"];

    private readonly List<SurveyLine> _lines = [];
    private readonly Dictionary<string, Open> _open = [];
    private readonly string[] _codes = [.. codes.Codes.Select(c => c.Trim().ToUpperInvariant()).Where(c => c.Length > 0).Distinct()];
    private int _longSteps;

    /// <summary>A line being made, by its code and figure.</summary>
    private sealed record Open(string Code, bool Begun, List<int> Points);

    private enum Mark
    {
        None,
        Begin,
        End,
    }

    public ImmutableArray<SurveyLine> Build()
    {
        for (var i = 0; i < points.Count; i++) Take(i);
        foreach (var open in _open.Values.ToList()) Close(open);
        foreach (var code in _codes.Where(c => !_lines.Exists(l => l.Code.StartsWith(c, StringComparison.Ordinal)))) problems.Add(PointFindings.CodeNotFound(code));
        if (_lines.Count > 0) problems.Add(PointFindings.LinesMade(_lines.Count, _lines.Sum(l => l.Points.Length)));
        if (_longSteps > 0) problems.Add(PointFindings.LongSteps(_longSteps));
        return [.. _lines];
    }

    private void Take(int index)
    {
        var marks = Marks(points[index].Description);
        foreach (var open in _open.Values.Where(o => !o.Begun && !marks.ContainsKey(o.Code)).ToList()) Close(open);
        // A point without height is a hole in the line, not a bridge.
        var usable = points[index].Height is not null;
        foreach (var (code, mark) in marks)
        {
            if ((mark == Mark.Begin || !usable) && _open.TryGetValue(code, out var before)) Close(before);
            if (!usable) continue;
            if (!_open.TryGetValue(code, out var line)) _open.Add(code, line = new(code, mark == Mark.Begin, []));
            Append(line, index);
            if (mark == Mark.End) Close(_open[code]);
        }
    }

    private void Append(Open line, int index)
    {
        if (line.Points.Count > 0 && codes.LongestStep is { } longest && Step(line.Points[^1], index) > longest)
        {
            _longSteps++;
            Close(line);
            _open.Add(line.Code, line with { Points = [index] });
            return;
        }
        line.Points.Add(index);
    }

    private double Step(int from, int to)
    {
        var (north, east) = (points[to].North - points[from].North, points[to].East - points[from].East);
        return Math.Sqrt(north * north + east * east);
    }

    private void Close(Open line)
    {
        _open.Remove(line.Code);
        if (line.Points.Count > 1) _lines.Add(new(line.Code, [.. line.Points]));
    }

    /// <summary>The codes, with their figures, that a description holds, and what the word behind each says.</summary>
    private Dictionary<string, Mark> Marks(string description)
    {
        var words = description.ToUpperInvariant().Split([' ', '/', '\t'], StringSplitOptions.RemoveEmptyEntries);
        var marks = new Dictionary<string, Mark>();
        for (var i = 0; i < words.Length; i++)
        {
            if (!IsOurs(words[i])) continue;
            var next = codes.BeginEnd && i + 1 < words.Length ? words[i + 1] : "";
            marks[words[i]] = Begins.Contains(next) ? Mark.Begin : Ends.Contains(next) ? Mark.End : Mark.None;
        }
        return marks;
    }

    private bool IsOurs(string word) => Array.Exists(
        _codes, c => word.StartsWith(c, StringComparison.Ordinal) && word.AsSpan(c.Length).IndexOfAnyExceptInRange('0', '9') < 0);
}
