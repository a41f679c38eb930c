using Tautline.Formats.Import;

namespace Tautline.Formats.GeoJson;

/// <summary>Leaves out lines with a fault, drops repeated positions, and settles which lines are closed.</summary>
internal sealed class LineCleaner(ProblemList problems)
{
    private int _repeats, _heights;

    public List<RawLine> Clean(List<RawLine> lines)
    {
        List<RawLine> clean = [];
        foreach (var line in lines)
        {
            if (IsSound(line) && Settle(line, WithoutRepeats(line.Positions)) is { } settled) clean.Add(settled);
        }

        if (_repeats > 0) problems.Add(GeoJsonFindings.RepeatsDropped(_repeats));
        if (_heights > 0) problems.Add(GeoJsonFindings.HeightsDropped(_heights));
        return clean;
    }

    private bool IsSound(RawLine line)
    {
        foreach (var position in line.Positions)
        {
            if (position.Fault == PositionFault.None) continue;
            problems.Add(GeoJsonFindings.BadPosition(line.Name, position.Fault), line.Feature, position.Offset);
            return false;
        }

        return true;
    }

    private List<RawPosition> WithoutRepeats(List<RawPosition> positions)
    {
        List<RawPosition> kept = [];
        foreach (var position in positions)
        {
            if (kept.Count == 0 || !position.SamePlaceAs(kept[^1])) kept.Add(position);
            else
            {
                _repeats++;
                NoteHeight(position, kept[^1]);
            }
        }

        return kept;
    }

    private void NoteHeight(RawPosition dropped, RawPosition kept)
    {
        if (dropped.HasZ && dropped.Z != kept.Z) _heights++;
    }

    private RawLine? Settle(RawLine line, List<RawPosition> places)
    {
        var ends = places.Count > 1 && places[^1].SamePlaceAs(places[0]);
        var different = ends ? places.Count - 1 : places.Count;
        if (different < (line.Closed ? 3 : 2)) return TooFew(line, different);
        if (ends && different == 2) return OutAndBack(line, places);
        if (line.Closed && !ends) problems.Add(GeoJsonFindings.RingNotClosed(line.Name), line.Feature, line.Offset);
        if (ends) DropLast(places);
        return line with { Closed = line.Closed || ends, Positions = places };
    }

    private void DropLast(List<RawPosition> places)
    {
        NoteHeight(places[^1], places[0]);
        places.RemoveAt(places.Count - 1);
    }

    private RawLine? TooFew(RawLine line, int different)
    {
        problems.Add(GeoJsonFindings.TooFewPoints(line.Name, different), line.Feature, line.Offset);
        return null;
    }

    private RawLine OutAndBack(RawLine line, List<RawPosition> places)
    {
        problems.Add(GeoJsonFindings.OutAndBack(line.Name), line.Feature, line.Offset);
        return line with { Positions = places };
    }
}
