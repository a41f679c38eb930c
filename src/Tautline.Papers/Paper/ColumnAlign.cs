namespace Tautline.Papers.Paper;

/// <summary>How the text of a column is set, or what is there in its place.</summary>
public enum ColumnAlign
{
    /// <summary>Words: at the left, where reading starts.</summary>
    Start,

    /// <summary>Figures: at the right, so that units stand under units.</summary>
    End,

    /// <summary>A box to tick; a text is not printed.</summary>
    Tick,

    /// <summary>Room to write by hand; a text is printed small where there is one.</summary>
    Blank,
}
