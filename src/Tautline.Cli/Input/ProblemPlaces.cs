using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Input;

/// <summary>Says where a problem is: the file, the path into the document with its line and column, and the station.</summary>
internal static class ProblemPlaces
{
    public static string Where(LoadedJob file, Place place, UnitSystem units)
    {
        List<string> parts = [file.Path];
        if (place.Path.Length > 0) parts.Add(place.Path);
        if (TextPlace(file.Json.Span, place.Path) is { } at) parts.Add(at);
        if (place.Line is { } line && place.Station is { } station && double.IsFinite(station.Metres))
            parts.Add($"line {line.Value} at {StationText.Format(station, units, 2)}");
        return string.Join(", ", parts);
    }

    /// <summary>Line and column of the value, or of what should hold it where it is left out; nothing for the whole document.</summary>
    private static string? TextPlace(ReadOnlySpan<byte> json, string path)
    {
        if (json.IsEmpty || path.Contains(' ')) return null;
        for (var rest = path; rest.Length > 0; rest = Parent(rest))
            if (JsonPlace.Of(json, rest) is { } at) return at;
        return null;
    }

    private static string Parent(string path) => path[..Math.Max(0, path.LastIndexOfAny(['.', '[']))];
}
