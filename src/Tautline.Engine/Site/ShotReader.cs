using Tautline.Engine.Jobs;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Works out the heights of the shots of one line: stated, or from rod readings and the height of the instrument.</summary>
internal sealed class ShotReader
{
    /// <summary>A level run that misses a known height by more is told; our own practice, about a coarse reading of a rod.</summary>
    private const double Miss = 0.01;

    /// <summary>Shots of one station that differ by less are one.</summary>
    private const double Same = 0.001;

    private readonly Line line;
    private readonly string path;
    private readonly Dictionary<LegId, SiteLeg> legs;
    private readonly ProblemList problems;
    private readonly List<(long StationNm, double Height)> read = [];
    private double? instrument;

    private ShotReader(Line line, string path, Dictionary<LegId, SiteLeg> legs, ProblemList problems)
        => (this.line, this.path, this.legs, this.problems) = (line, path, legs, problems);

    /// <summary>In order of station; of one station in the order they were taken.</summary>
    public static IReadOnlyList<GroundVertex> Read(Line line, string path, Dictionary<LegId, SiteLeg> legs, ProblemList problems)
    {
        var reader = new ShotReader(line, path, legs, problems);
        for (var i = 0; i < line.Ground!.Shots.Count; i++) reader.Take(line.Ground.Shots[i], $"{path}.ground.shots[{i}]");
        return reader.Ordered();
    }

    private void Take(GroundShot shot, string at)
    {
        if (!legs.TryGetValue(shot.Leg, out var leg))
        {
            problems.Add(ProblemCode.GroundShotLeg, new($"{at}.leg", line.Id), shot.Leg.Value ?? "");
            return;
        }
        var place = new Place(at, line.Id, Length.FromNanometres(leg.StartNm) + shot.At);
        if (!(shot.At.Metres >= -1e-6 && shot.At.Metres <= leg.LevelNm * 1e-9 + 1e-6))
        {
            problems.Add(ProblemCode.GroundShotOutside, place, shot.At, Length.FromNanometres(leg.LevelNm));
            return;
        }
        if (HeightOf(shot, place) is not { } height) return;
        if (!(Math.Abs(height) < 20_000)) problems.Add(ProblemCode.NotFinite, place);
        else read.Add((leg.StartNm + Math.Clamp(shot.At.Nanometres, 0, leg.LevelNm), height));
        if (shot.Again is { } again) instrument = height + again.Metres;
    }

    private double? HeightOf(GroundShot shot, Place place)
    {
        if (shot.Height is { } known)
        {
            if (shot.Rod is { } rod)
            {
                if (instrument - rod.Metres is { } levelled && Math.Abs(levelled - known.Metres) > Miss)
                    problems.Add(ProblemCode.LevelMisses, place, new Length(Math.Abs(levelled - known.Metres)));
                instrument = known.Metres + rod.Metres;
            }
            return known.Metres;
        }
        if (shot.Rod is { } reading && instrument is { } high) return high - reading.Metres;
        problems.Add(shot.Rod is null ? ProblemCode.GroundShotEmpty : ProblemCode.InstrumentUnknown, place);
        return null;
    }

    private List<GroundVertex> Ordered()
    {
        List<GroundVertex> vertices = [];
        foreach (var (station, height) in read.Select((r, i) => (r.StationNm, r.Height, i)).OrderBy(r => r.StationNm).ThenBy(r => r.i).Select(r => (r.StationNm, r.Height)))
        {
            var metres = station * 1e-9;
            if (vertices.Count > 0 && vertices[^1].Station == metres)
            {
                if (Math.Abs(vertices[^1].Height - height) <= Same) continue;
                problems.Add(ProblemCode.GroundUpright, new(path, line.Id, Length.FromNanometres(station)), new Length(vertices[^1].Height), new Length(height));
            }
            vertices.Add(new GroundVertex(metres, height));
        }
        return vertices;
    }
}
