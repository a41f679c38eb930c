using System.Collections.Immutable;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>How a survey text is laid out.</summary>
/// <param name="Separator">Between fields.</param>
/// <param name="DecimalComma">Whether numbers have one.</param>
/// <param name="Header">The row that names the columns; null where there is none.</param>
/// <param name="Stated">The order of the columns, stated or named by a header; null when it must be asked.</param>
/// <param name="Proposals">Orders that would fit, likeliest first; empty where no row looks like a point.</param>
internal sealed record SurveyLayout(char Separator, bool DecimalComma, SurveyHeader? Header, ColumnOrder? Stated, ImmutableArray<ColumnOrder> Proposals)
{
    private const int Sample = 5000; // lines looked at
    private const double MostRows = 0.9; // share of rows that makes a column one of numbers
    private const int CutNumbers = 6; // whole numbers in a row: point, and north and east cut in two by their comma

    /// <summary>Finds the layout; null where no row looks like a point or its numbers cannot be told apart, which is then among the problems.</summary>
    public static SurveyLayout? Find(ImmutableArray<string> lines, SurveyPointOptions options, ProblemList problems)
    {
        var sample = lines.Select((text, i) => (Text: text, Line: i)).Where(l => !SurveyRow.IsComment(l.Text) && l.Text.Trim().Length > 0).Take(Sample).ToList();
        var separator = options.Separator ?? BestSeparator(sample.Select(l => l.Text));
        var rows = sample.Select(l => (l.Line, Fields: RowSplitter.Split(l.Text, separator))).ToList();
        var data = rows.Where(r => IsData(r.Fields, separator)).Select(r => r.Fields).ToList();
        var header = rows.Select(r => SurveyHeader.Of(r.Line, r.Fields)).FirstOrDefault(h => h is not null);
        if (data.Count == 0)
        {
            problems.Add(PointFindings.NoPoints);
            return null;
        }
        if (separator == ',' && options.Separator is null && CommasCollide(data))
        {
            problems.Add(PointFindings.CommasCollide(string.Join(',', data[0].Select(f => f.Text))));
            return null;
        }
        var stated = options.Columns ?? (header is { Certain: true } ? header.Order : null);
        if (options.Columns is { } said && header is { Certain: true } && Differ(said, header.Order))
            problems.AddAtLine(PointFindings.HeaderContradicts(header.Order, said), header.Line + 1);
        return new(separator, separator != ',' && HasDecimalCommas(data), header, stated, Proposed(data, header, separator));
    }

    private static char BestSeparator(IEnumerable<string> lines)
    {
        var sample = lines.Take(Sample).ToList();
        // The first of equals: a tab or semicolon is no chance, a blank may be.
        return ((char[])['\t', ';', ',', RowSplitter.Blanks]).MaxBy(s => sample.Count(l => IsData(RowSplitter.Split(l, s), s)));
    }

    /// <summary>Whether two neighbouring fields near the start are numbers.</summary>
    private static bool IsData(List<RowField> fields, char separator)
    {
        for (var i = 0; i < 3 && i + 1 < fields.Count; i++)
            if (IsNumber(fields[i], separator) && IsNumber(fields[i + 1], separator)) return true;
        return false;
    }

    private static bool IsNumber(RowField field, char separator) =>
        SurveyNumber.Of(field, false) is not null || (separator != ',' && SurveyNumber.HasDecimalComma(field.Text));

    private static bool HasDecimalCommas(List<List<RowField>> data)
    {
        var numbers = data.SelectMany(r => r.Take(5)).ToList();
        return numbers.Count(f => SurveyNumber.HasDecimalComma(f.Text)) > numbers.Count(f => f.Text.Contains('.') && SurveyNumber.Of(f, false) is not null);
    }

    // 1,538542,57,1455644,37: a comma file whose numbers have no point at all and stand twice as many in a row as coordinates do.
    private static bool CommasCollide(List<List<RowField>> data) =>
        data.Count(r => r.Count >= CutNumbers && r.Take(CutNumbers).All(f => IsWhole(f.Text))) > MostRows * data.Count;

    private static bool IsWhole(string text) => text.Length > 0 && text.AsSpan().TrimStart("+-").IndexOfAnyExceptInRange('0', '9') < 0;

    private static bool Differ(ColumnOrder a, ColumnOrder b) =>
        a.Place(SurveyColumn.North) != b.Place(SurveyColumn.North) || a.Place(SurveyColumn.East) != b.Place(SurveyColumn.East);

    private static ImmutableArray<ColumnOrder> Proposed(List<List<RowField>> data, SurveyHeader? header, char separator)
    {
        if (header is { } named) return [named.Order, named.Order.Swapped];
        var first = Enumerable.Range(0, 3).First(c => c == 2 || (IsNumberColumn(data, c, separator) && IsNumberColumn(data, c + 1, separator)));
        var run = Enumerable.Range(first, 5).TakeWhile(c => IsNumberColumn(data, c, separator)).Count();
        var widest = data.Max(r => r.Count);
        var orders = Shapes(first, run, data).Select(s => ColumnOrder.Of(widest > s.Length && !s.Contains('D') ? s + "D" : s));
        return [.. orders.SelectMany(o => (ColumnOrder[])[o, o.Swapped])];
    }

    private static string[] Shapes(int first, int run, List<List<RowField>> data) => (first, run) switch
    {
        (0, >= 4) => ["PNEZ", "NEZ"],
        (0, 3) => NumbersPoints(data) ? ["PNE", "NEZ"] : ["NEZ", "PNE"],
        (0, _) => ["NE"],
        (1, >= 3) => ["PNEZ"],
        (1, _) => ["PNE"],
        (_, >= 3) => ["PDNEZ"],
        _ => ["PDNE"],
    };

    private static bool IsNumberColumn(List<List<RowField>> data, int column, char separator) =>
        data.Count(r => r.Count > column && IsNumber(r[column], separator)) >= MostRows * data.Count;

    /// <summary>Whether the first column counts: whole numbers, all different, beside numbers that are not whole.</summary>
    private static bool NumbersPoints(List<List<RowField>> data) =>
        data.All(r => IsWhole(r[0].Text)) && data.DistinctBy(r => r[0].Text).Count() == data.Count && data.Exists(r => r.Count > 1 && !IsWhole(r[1].Text));
}
