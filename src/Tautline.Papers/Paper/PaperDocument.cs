namespace Tautline.Papers.Paper;

/// <summary>A paper before anything is measured: words, figures and drawings only. Texts are plain; a line break in one is kept.</summary>
public sealed record PaperDocument(string Title)
{
    public PaperWords Words { get; init; } = PaperWords.English;

    /// <summary>The paper of every sheet that does not say its own.</summary>
    public PaperFormat Format { get; init; }

    /// <summary>Each starts on a page of its own.</summary>
    public IReadOnlyList<PaperSheet> Sheets { get; init; } = [];

    /// <summary>Small print at the foot of every page, for instance the plan hash.</summary>
    public string Footer { get; init; } = "";
}
