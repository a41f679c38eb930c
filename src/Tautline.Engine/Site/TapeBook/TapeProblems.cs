using System.Globalization;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Collects the problems of one book, up to a number nobody reads past.</summary>
internal sealed class TapeProblems
{
    private const int Most = 500;

    private readonly List<TapeProblem> found = [];

    public bool HasErrors { get; private set; }

    /// <summary>In the order of the book.</summary>
    public IReadOnlyList<TapeProblem> Found => [.. found.OrderBy(p => p.Line).ThenBy(p => p.Column)];

    /// <summary>The one told last.</summary>
    public TapeProblem Last => found[^1];

    public void Add(TapeText text, int line, int column, params object[] figures)
    {
        HasErrors |= text.Severity == Severity.Error;
        if (found.Count < Most) found.Add(Problem(text, line, column, figures));
        else if (found.Count == Most) found.Add(Problem(TapeTexts.TooManyProblems, line, 1, Most));
    }

    private static TapeProblem Problem(TapeText text, int line, int column, params object[] figures)
        => new(text.Severity, text.Code, line, column, Fill(text.Message, figures), Fill(text.Hint, figures));

    private static string Fill(string template, object[] figures) => string.Format(CultureInfo.InvariantCulture, template, figures);
}
