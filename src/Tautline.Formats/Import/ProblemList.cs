using System.Collections.Immutable;

namespace Tautline.Formats.Import;

/// <summary>Collects problems while a file is read. Beyond a limit they are counted, not kept.</summary>
internal sealed class ProblemList(string source, TextPlaces places)
{
    private const int Limit = 200;
    private readonly List<(ImportProblem Problem, int Order)> _kept = [];
    private int _beyond;

    public bool HasErrors { get; private set; }

    /// <summary>Adds a problem of the whole file (no offset) or at a byte of the text.</summary>
    public void Add(Finding finding, int? feature = null, int? offset = null)
    {
        HasErrors |= finding.Severity == ProblemSeverity.Error;
        if (_kept.Count >= Limit) _beyond++;
        else _kept.Add((new(finding.Severity, finding.Code, Place(feature, offset), finding.Message, finding.Hint), offset ?? -1));
    }

    public ImmutableArray<ImportProblem> ToImmutable()
    {
        var ordered = _kept.OrderBy(p => p.Order).Select(p => p.Problem);
        return _beyond == 0 ? [.. ordered] : [.. ordered, TooMany()];
    }

    private ImportProblem TooMany() => new(
        HasErrors ? ProblemSeverity.Error : ProblemSeverity.Warning, "TooManyProblems", new(source),
        $"{_beyond} more problems are not listed.", "Mend the ones above and read the file again.");

    private ProblemPlace Place(int? feature, int? offset)
    {
        if (offset is not { } at) return new(source, feature);
        var (line, column) = places.Of(at);
        return new(source, feature, line, column);
    }
}
