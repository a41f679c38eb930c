using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>Reads all lines and tells what was passed over.</summary>
internal sealed partial class SurveyRowList(SurveyLayout layout, ColumnOrder order, ProblemList problems)
{
    private readonly int[] _counts = new int[5];
    private string _firstHeading = "";
    private int _rules;

    public List<SurveyPoint> Read(ImmutableArray<string> lines)
    {
        var row = new SurveyRow(layout, order);
        var points = new List<SurveyPoint>();
        for (var i = 0; i < lines.Length; i++)
        {
            if (i == layout.Header?.Line) continue;
            var (kind, point, wrong) = row.Read(lines[i], i + 1);
            Count(kind, lines[i], i + 1);
            if (wrong is { } finding) problems.AddAtLine(finding, i + 1);
            if (point is not null) points.Add(WithoutRule(point));
        }
        Tell(lines, points);
        return points;
    }

    private void Count(SurveyRowKind kind, string line, int number)
    {
        if (kind == SurveyRowKind.Heading && _counts[(int)kind] == 0)
            _firstHeading = string.Create(CultureInfo.InvariantCulture, $" (the first is line {number}, '{line.Trim()[..Math.Min(line.Trim().Length, 40)]}')");
        _counts[(int)kind]++;
    }

    private SurveyPoint WithoutRule(SurveyPoint point)
    {
        var cut = Rule().Replace(point.Description, "");
        if (cut.Length == point.Description.Length) return point;
        _rules++;
        return point with { Description = cut };
    }

    private void Tell(ImmutableArray<string> lines, List<SurveyPoint> points)
    {
        var (blank, comments, headings) = (_counts[(int)SurveyRowKind.Blank], _counts[(int)SurveyRowKind.Comment], _counts[(int)SurveyRowKind.Heading]);
        if (blank + comments + headings > 0) problems.Add(PointFindings.Skipped(blank, comments, headings, _firstHeading));
        if (_rules > 0) problems.Add(PointFindings.RulesCut(_rules));
        if (points is [.., var before, var last] && last.Line == lines.Length && Columns(lines[last.Line - 1]) < Columns(lines[before.Line - 1]))
            problems.AddAtLine(PointFindings.LastLineOpen, last.Line);
    }

    private int Columns(string line) => RowSplitter.Split(line, layout.Separator).Count;

    // Print-outs fill the line with dashes behind the code.
    [GeneratedRegex(@"(^|\s+)-{2,}$", RegexOptions.CultureInvariant)]
    private static partial Regex Rule();
}
