namespace Tautline.Papers.Paper;

/// <summary>One sheet of a paper: it stands alone, so that it can be handed out by itself. It takes as many pages as it needs.</summary>
/// <param name="Name">What the sheet is: it stands at the top of each of its pages.</param>
public sealed record PaperSheet(string Name)
{
    public PaperFormat? Format { get; init; }

    /// <summary>Lines under the name: whose job, where, which line.</summary>
    public IReadOnlyList<string> Head { get; init; } = [];

    public IReadOnlyList<PaperBlock> Blocks { get; init; } = [];

    /// <summary>Safety cautions. They stand in a box at the foot of the sheet's first page.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>What the code in the corner says to a camera; empty for none.</summary>
    public string Code { get; init; } = "";
}
