namespace Tautline.Documents.Paper;

/// <summary>The side of its column to which text is set.</summary>
public enum ColumnAlign
{
    /// <summary>Words: at the left, where reading starts.</summary>
    Start,

    /// <summary>Figures: at the right, so that units stand under units.</summary>
    End,
}
