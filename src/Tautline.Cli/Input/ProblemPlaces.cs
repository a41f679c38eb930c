using System.Globalization;
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
        if (place.Path.Length > 0) parts.Add(InPlan(place.Path) ?? place.Path);
        if (TextPlace(file.Json.Span, place.Path) is { } at) parts.Add(at);
        if (place.Line is { } line && place.Station is { } station && double.IsFinite(station.Metres))
            parts.Add($"line {line.Value} at {StationText.Format(station, units, 2)}");
        return string.Join(", ", parts);
    }

    /// <summary>A path into the plan's list, not into the file: takeoff[3] is take-off line 4.</summary>
    private static string? InPlan(string path)
        => path.StartsWith("takeoff[", StringComparison.Ordinal) && int.TryParse(path.AsSpan(8, path.Length - 9), CultureInfo.InvariantCulture, out var index)
            ? string.Create(CultureInfo.InvariantCulture, $"take-off line {index + 1}")
            : null;

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
