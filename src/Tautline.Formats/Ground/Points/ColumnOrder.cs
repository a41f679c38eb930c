using System.Collections.Immutable;

namespace Tautline.Formats.Ground.Points;

/// <summary>What a column of survey text holds.</summary>
public enum SurveyColumn
{
    Point,
    North,
    East,
    Height,
    Description,
    Skip,
}

/// <summary>
/// The columns of survey text in order, written as the trade does: PNEZD is point, north, east, height, description. P, N, E, Z (or H), D; X is
/// east and Y north; a dash is a column that is passed over. North and east are always there, each of the others at most once.
/// </summary>
public sealed record ColumnOrder
{
    private ColumnOrder(string text) => Text = text;

    /// <summary>The letters, with N and E whatever they were given as.</summary>
    public string Text { get; }

    /// <summary>One for each letter.</summary>
    public ImmutableArray<SurveyColumn> Columns => [.. Text.Select(Column).OfType<SurveyColumn>()];

    /// <summary>Where a column stands, from 0; -1 where there is none.</summary>
    public int Place(SurveyColumn column) => Columns.IndexOf(column);

    /// <summary>The order written so; null when it is not one.</summary>
    public static ColumnOrder? Find(string text)
    {
        var letters = text.ToUpperInvariant().Replace(" ", "", StringComparison.Ordinal).Replace(",", "", StringComparison.Ordinal)
            .Replace('X', 'E').Replace('Y', 'N').Replace('H', 'Z');
        if (letters.Any(c => Column(c) is null)) return null;
        return "NE".All(c => letters.Count(c.Equals) == 1) && "PZD".All(c => letters.Count(c.Equals) <= 1) ? new(letters) : null;
    }

    /// <summary>The order written so; throws when it is not one.</summary>
    public static ColumnOrder Of(string text) =>
        Find(text) ?? throw new ArgumentException($"'{text}' is no column order such as PNEZD", nameof(text));

    /// <summary>The same with north and east changed over.</summary>
    internal ColumnOrder Swapped => new(Text.Replace('N', '?').Replace('E', 'N').Replace('?', 'E'));

    private static SurveyColumn? Column(char letter) => letter switch
    {
        'P' => SurveyColumn.Point,
        'N' => SurveyColumn.North,
        'E' => SurveyColumn.East,
        'Z' => SurveyColumn.Height,
        'D' => SurveyColumn.Description,
        '-' => SurveyColumn.Skip,
        _ => null,
    };

    public override string ToString() => Text;
}
