using System.Collections.Immutable;
using Tautline.Formats.Import;

namespace Tautline.Formats.Sites.Reading;

/// <summary>Ends the reading of a file; the reason is the finding.</summary>
internal sealed class SiteStop(Finding finding, int? line = null) : Exception
{
    public Finding Finding { get; } = finding;

    public int? Line { get; } = line;
}

/// <summary>Gathers what a reader finds: features, counts, layers, problems; keeps the limits.</summary>
internal sealed class SiteCollector(SiteOptions options)
{
    private const int OfAKind = 20;

    private readonly List<SiteFeature> _features = [];
    private readonly Dictionary<(string Kind, string Why), int> _counts = [];
    private readonly List<(string Kind, string Why)> _order = [];
    private readonly Dictionary<string, (int Lines, int Points, int Order)> _layers = new(StringComparer.Ordinal);
    private readonly HashSet<string> _hidden = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _words = new(StringComparer.Ordinal);
    private SiteBox _box = SiteBox.Nothing;
    private int _positions, _vertices, _repeats, _byPlace, _nearly;
    private double _flattened;

    public SiteOptions Options => options;

    public ProblemList Problems { get; } = new(options.SourceName, null, OfAKind);

    public SiteClaims Claims { get; set; } = new();

    public string FormatName { get; set; } = "";

    /// <summary>Number of the next thing of the file.</summary>
    public int Next { get; private set; } = 1;

    public int NextNumber() => Next++;

    /// <summary>One text for all that are equal: a file names the same layer a hundred thousand times.</summary>
    public string Shared(string text)
    {
        if (_words.TryGetValue(text, out var same)) return same;
        if (_words.Count < 100_000) _words.Add(text, text);
        return text;
    }

    public void Point(SiteFeature point)
    {
        _positions++;
        if (!IsPlace(point.Vertices[0]))
        {
            Skip(point.Kind, SiteFindings.NoPosition);
            return;
        }
        Count(point.Kind);
        Keep(point with { IsPoint = true });
    }

    /// <summary>
    /// Takes a line after repeated places are dropped and it is settled whether it is closed: by the file's word, or because it ends where it begins.
    /// </summary>
    /// <param name="line">Closed by the file's word; its vertices as the file has them.</param>
    /// <param name="vertices">In place of those of the line.</param>
    /// <returns>Whether it was kept.</returns>
    public bool Line(SiteFeature line, List<SiteVertex> vertices)
    {
        _positions += vertices.Count;
        if (!vertices.TrueForAll(IsPlace))
        {
            Skip(line.Kind, SiteFindings.NoPosition);
            return false;
        }
        var kept = WithoutRepeats(vertices);
        var closed = line.Closed;
        if (kept.Count > 2 && kept[^1].SamePlaceAs(kept[0]))
        {
            if (!closed) _byPlace++;
            closed = true;
            kept.RemoveAt(kept.Count - 1);
        }
        // Two corners are an area only with an arc between them.
        if (closed && kept.Count == 2 && kept[0].Bulge == 0 && kept[1].Bulge == 0) closed = false;
        if (kept.Count < 2)
        {
            Skip(line.Kind, SiteFindings.NoLength);
            return false;
        }
        if (!closed) kept[^1] = kept[^1] with { Bulge = 0 };
        Count(line.Kind);
        Keep(line with { Closed = closed, Vertices = [.. kept] });
        return true;
    }

    public void Skip(string kind, string why, int count = 1) => Add((kind, why), count);

    public void Hide(string layer) => _hidden.Add(layer);

    public void Flattened(double within) => _flattened = Math.Max(_flattened, within);

    /// <summary>Where every height is exactly 0 there is none: a flat drawing writes zeros.</summary>
    public void DropZeroHeights()
    {
        if (_box is not { Lowest: 0, Highest: 0 }) return;
        for (var i = 0; i < _features.Count; i++)
            _features[i] = _features[i] with { Vertices = [.. _features[i].Vertices.Select(v => v with { Z = double.NaN })] };
        _box = _box with { Lowest = double.PositiveInfinity, Highest = double.NegativeInfinity };
        Problems.Add(SiteFindings.FlatDrawing);
    }

    /// <summary>Nothing of a damaged file is used: a part must not look like the whole.</summary>
    public void Clear()
    {
        _features.Clear();
        _layers.Clear();
        _box = SiteBox.Nothing;
    }

    public SiteFile File(SiteFormat format, ImmutableArray<SiteQuestion> questions = default)
    {
        TellDone();
        return new()
        {
            SourceName = options.SourceName,
            Format = format,
            FormatName = FormatName,
            Claims = Claims,
            Features = [.. _features],
            Counts = [.. Counts()],
            Layers = [.. Layers()],
            Extent = _box.IsEmpty ? null : _box,
            Positions = _positions,
            FlattenedWithin = _flattened > 0 ? _flattened : null,
            Questions = questions.IsDefault ? [] : questions,
            Problems = Problems.ToImmutable(),
        };
    }

    private void TellDone()
    {
        if (_repeats > 0) Problems.Add(SiteFindings.RepeatsDropped(_repeats));
        if (_byPlace > 0) Problems.Add(SiteFindings.ClosedByPlace(_byPlace));
        if (_nearly > 0) Problems.Add(SiteFindings.HeightsDropped(_nearly));
        if (_flattened > 0) Problems.Add(SiteFindings.Flattened(_flattened, Claims.Unit));
        var skipped = Counts().Where(c => c.Skipped > 0).ToList();
        if (skipped.Count > 0) Problems.Add(SiteFindings.Skipped(skipped));
        if (_features.Count == 0 && !Problems.HasErrors) Problems.Add(SiteFindings.NothingFound);
    }

    private List<SiteVertex> WithoutRepeats(List<SiteVertex> vertices)
    {
        var kept = new List<SiteVertex>(vertices.Count);
        foreach (var vertex in vertices)
        {
            if (kept.Count == 0 || !vertex.SamePlaceAs(kept[^1]))
            {
                kept.Add(vertex);
                continue;
            }
            _repeats++;
            if (!double.IsNaN(vertex.Z) && vertex.Z != kept[^1].Z) _nearly++;
            // The step that leaves the place is that of the last of them.
            kept[^1] = kept[^1] with { Bulge = vertex.Bulge };
        }
        return kept;
    }

    private static bool IsPlace(SiteVertex v) => Math.Abs(v.X) < 1e12 && Math.Abs(v.Y) < 1e12 && double.IsFinite(v.Bulge) && !double.IsInfinity(v.Z);

    private void Keep(SiteFeature feature)
    {
        _vertices += feature.Vertices.Length;
        if (_features.Count >= options.Limits.Features || _vertices > options.Limits.Vertices)
            throw new SiteStop(SiteFindings.TooMany(options.Limits), feature.Line);
        _features.Add(feature);
        foreach (var vertex in feature.Vertices) _box = _box.With(vertex);
        var (lines, points, order) = _layers.TryGetValue(feature.Layer, out var layer) ? layer : (0, 0, _layers.Count);
        _layers[feature.Layer] = feature.IsPoint ? (lines, points + 1, order) : (lines + 1, points, order);
    }

    private void Count(string kind) => Add((kind, ""), 1);

    private void Add((string Kind, string Why) key, int count)
    {
        if (_counts.TryAdd(key, 0))
        {
            // A hostile file could make up a hundred thousand kinds.
            if (_order.Count >= 500)
            {
                _counts.Remove(key);
                return;
            }
            _order.Add(key);
        }
        _counts[key] += count;
    }

    private IEnumerable<SiteCount> Counts() =>
        _order.Select(k => k.Why.Length == 0 ? new SiteCount(k.Kind, _counts[k], 0, "") : new SiteCount(k.Kind, 0, _counts[k], k.Why));

    private IEnumerable<SiteLayer> Layers() => _layers.OrderBy(l => l.Value.Order).Select(l => new SiteLayer(
        l.Key, l.Value.Lines, l.Value.Points, _hidden.Contains(l.Key),
        !_hidden.Contains(l.Key) && (_layers.Count == 1 || LayerNames.SayFence(l.Key))));
}

/// <summary>Names that drawings give to what a fence follows. Common practice, no source.</summary>
internal static class LayerNames
{
    private static readonly string[] Words = ["FENCE", "FNC", "CHAIN", "PROP", "BOUND", "LOT", "R/W", "PARCEL", "PERIM"];

    public static bool SayFence(string layer) => Words.Any(w => layer.Contains(w, StringComparison.OrdinalIgnoreCase));
}
