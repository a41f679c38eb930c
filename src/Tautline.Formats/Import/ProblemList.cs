using System.Collections.Immutable;
using System.Globalization;

namespace Tautline.Formats.Import;

/// <summary>Collects problems while a file is read. Beyond a limit, for all together and for each kind, they are counted, not kept.</summary>
/// <param name="source">The file's name, for messages.</param>
/// <param name="places">Turns offsets into lines; null where the reader knows its lines itself.</param>
/// <param name="eachKind">How many of one code are kept.</param>
internal sealed class ProblemList(string source, TextPlaces? places = null, int eachKind = int.MaxValue)
{
    private const int Limit = 200;
    private readonly List<(ImportProblem Problem, int Order)> _kept = [];
    private readonly Dictionary<string, (int Count, ProblemSeverity Worst)> _kinds = [];
    private int _beyond;

    public bool HasErrors { get; private set; }

    /// <summary>Adds a problem of the whole file (no offset) or at a byte of the text.</summary>
    public void Add(Finding finding, int? feature = null, int? offset = null) => Add(finding, Place(feature, offset), offset ?? -1);

    /// <summary>Adds a problem at a line of the text, counted from 1.</summary>
    public void AddAtLine(Finding finding, int line, int? column = null) => Add(finding, new(source, null, line, column), line);

    public ImmutableArray<ImportProblem> ToImmutable()
    {
        var ordered = _kept.OrderBy(p => p.Order).Select(p => p.Problem).Concat(MoreOfAKind());
        return _beyond == 0 ? [.. ordered] : [.. ordered, TooMany()];
    }

    private void Add(Finding finding, ProblemPlace place, int order)
    {
        HasErrors |= finding.Severity == ProblemSeverity.Error;
        var (count, worst) = _kinds.GetValueOrDefault(finding.Code);
        _kinds[finding.Code] = (count + 1, finding.Severity > worst ? finding.Severity : worst);
        if (count >= eachKind) return;
        if (_kept.Count >= Limit) _beyond++;
        else _kept.Add((new(finding.Severity, finding.Code, place, finding.Message, finding.Hint), order));
    }

    private IEnumerable<ImportProblem> MoreOfAKind() => _kinds.Where(k => k.Value.Count > eachKind)
        .Select(k => new ImportProblem(
            k.Value.Worst, k.Key, new(source), string.Create(CultureInfo.InvariantCulture, $"{k.Value.Count - eachKind} more of this kind are not listed."), ""));

    private ImportProblem TooMany() => new(
        HasErrors ? ProblemSeverity.Error : ProblemSeverity.Warning, "TooManyProblems", new(source),
        $"{_beyond} more problems are not listed.", "Mend the ones above and read the file again.");

    private ProblemPlace Place(int? feature, int? offset)
    {
        if (offset is not { } at || places is null) return new(source, feature);
        var (line, column) = places.Of(at);
        return new(source, feature, line, column);
    }
}
