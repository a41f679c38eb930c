using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>Says where a problem is: the path into the document, its line and column, and the station.</summary>
internal static class ProblemPlace
{
    public static string Where(OpenedJob file, Place place)
    {
        List<string> parts = [];
        if (place.Path.Length > 0) parts.Add(place.Path);
        if (TextPlace(file.Json.Span, place.Path) is { } at) parts.Add(at);
        if (place.Line is { } line && place.Station is { } station && double.IsFinite(station.Metres))
            parts.Add($"line {line.Value} at {StationText.Format(station, file.Units, 2)}");
        return string.Join(", ", parts);
    }

    // A value that is left out has no place of its own: what should hold it has.
    private static string? TextPlace(ReadOnlySpan<byte> json, string path)
    {
        if (json.IsEmpty || path.Contains(' ')) return null;
        for (string rest = path; rest.Length > 0; rest = rest[..Math.Max(0, rest.LastIndexOfAny(['.', '[']))])
            if (JsonPlace.Of(json, rest) is { } at) return at;
        return null;
    }
}
