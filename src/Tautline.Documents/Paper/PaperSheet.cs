namespace Tautline.Documents.Paper;

/// <summary>
/// What goes on one printed page, before anything is measured: words and figures only.
/// Every list may be empty. Texts are plain; a line break in one is kept.
/// </summary>
public sealed record PaperSheet(string Title)
{
    public PaperSize Size { get; init; } = PaperSize.Letter;

    /// <summary>The language of the texts, as a BCP 47 tag: a reading aid needs it.</summary>
    public string Language { get; init; } = "en-US";

    /// <summary>Lines under the title: whose job, where, which revision.</summary>
    public IReadOnlyList<string> Subtitle { get; init; } = [];

    public IReadOnlyList<PaperTable> Tables { get; init; } = [];

    /// <summary>Remarks under the tables.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Safety cautions. They stand in a box at the foot and are the last thing to give way when space is short.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Small print at the foot, for instance the plan hash.</summary>
    public string Footer { get; init; } = "";
}
