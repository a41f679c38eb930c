using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>What a line of survey text is.</summary>
internal enum SurveyRowKind
{
    Blank,
    Comment,

    /// <summary>A title, a rule, a total: anything that does not look like a point.</summary>
    Heading,

    /// <summary>Looks like a point and is none.</summary>
    Broken,
    Point,
}

/// <summary>Reads single lines under a settled layout.</summary>
internal sealed class SurveyRow(SurveyLayout layout, ColumnOrder order)
{
    private readonly int _north = order.Place(SurveyColumn.North);
    private readonly int _east = order.Place(SurveyColumn.East);
    private readonly int _height = order.Place(SurveyColumn.Height);
    private readonly int _point = order.Place(SurveyColumn.Point);
    private readonly int _description = order.Place(SurveyColumn.Description);

    /// <summary>A line that begins with one of the marks of a comment.</summary>
    public static bool IsComment(string line)
    {
        var text = line.AsSpan().TrimStart();
        return text.StartsWith("#") || text.StartsWith(";") || text.StartsWith("//") || text.StartsWith("--");
    }

    /// <summary>What the line is, the point where it is one, and what is wrong where it is broken.</summary>
    public (SurveyRowKind Kind, SurveyPoint? Point, Finding? Wrong) Read(string line, int number)
    {
        if (string.IsNullOrWhiteSpace(line)) return (SurveyRowKind.Blank, null, null);
        if (IsComment(line)) return (SurveyRowKind.Comment, null, null);
        var fields = RowSplitter.Split(line, layout.Separator);
        var (north, east) = (Number(fields, _north), Number(fields, _east));
        var heightText = TextOf(fields, _height);
        var height = Number(fields, _height);
        // A row that ends before its height was cut off; a blank in its place says that there is none.
        var noHeight = _height < fields.Count && SurveyNumber.IsNoHeight(heightText, layout.DecimalComma);
        if (north is { } n && east is { } e && (height is not null || noHeight))
            return (SurveyRowKind.Point, new(TextOf(fields, _point), n, e, noHeight ? null : height, Description(line, fields), number), null);
        return Expected(north, east, height) ? (SurveyRowKind.Broken, null, Why(fields, north, east)) : (SurveyRowKind.Heading, null, null);
    }

    // Half of the numbers a point has make a line look like one.
    private bool Expected(double? north, double? east, double? height)
    {
        var found = (north is null ? 0 : 1) + (east is null ? 0 : 1) + (height is null ? 0 : 1);
        return 2 * found >= (_height < 0 ? 2 : 3);
    }

    private Finding Why(List<RowField> fields, double? north, double? east)
    {
        var (column, at) = north is null ? ("north", _north) : east is null ? ("east", _east) : ("height", _height);
        return at >= fields.Count ? PointFindings.ShortRow(fields.Count, column) : PointFindings.NotANumber(column, fields[at].Text);
    }

    private double? Number(List<RowField> fields, int at) => at >= 0 && at < fields.Count ? SurveyNumber.Of(fields[at], layout.DecimalComma) : null;

    private static string TextOf(List<RowField> fields, int at) => at >= 0 && at < fields.Count ? fields[at].Text : "";

    private string Description(string line, List<RowField> fields)
    {
        if (_description < 0 || _description >= fields.Count) return "";
        return _description == order.Columns.Length - 1 ? RowSplitter.RestOf(line, fields[_description]) : fields[_description].Text;
    }
}
