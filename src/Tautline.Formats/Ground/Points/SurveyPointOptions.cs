namespace Tautline.Formats.Ground.Points;

/// <summary>What is done with rows that stand at one place many times.</summary>
public enum PlaceHolders
{
    /// <summary>They are no positions and are left out.</summary>
    LeaveOut,

    /// <summary>They are positions.</summary>
    Keep,
}

/// <summary>How survey text is laid out; what is null is found out or asked.</summary>
public sealed record SurveyPointOptions
{
    /// <summary>Which column is what; null to take a header's word, or to ask.</summary>
    public ColumnOrder? Columns { get; init; }

    /// <summary>Comma, semicolon, tab, or a blank for runs of blanks; null to take what fits most rows.</summary>
    public char? Separator { get; init; }

    /// <summary>Null to ask where there are such rows.</summary>
    public PlaceHolders? PlaceHolders { get; init; }

    /// <summary>Which codes make breaklines; null for none.</summary>
    public BreaklineCodes? Breaklines { get; init; }

    /// <summary>True when a height of exactly 0 is a height even where all others lie far from it.</summary>
    public bool ZeroIsAHeight { get; init; }
}
