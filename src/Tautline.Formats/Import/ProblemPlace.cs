using System.Globalization;

namespace Tautline.Formats.Import;

/// <summary>Where in a file a problem lies.</summary>
/// <param name="Source">The file's name as the user knows it.</param>
/// <param name="Feature">Number of the feature, counted from 1; null when the problem is of the whole file.</param>
/// <param name="Line">Line of the text, counted from 1; null when no single place is meant.</param>
/// <param name="Column">Column in that line, in characters, counted from 1.</param>
public sealed record ProblemPlace(string Source, int? Feature = null, int? Line = null, int? Column = null)
{
    /// <summary>For people: "outline.geojson, feature 3, line 12, column 8".</summary>
    public override string ToString() => string.Concat(Source, Part("feature", Feature), Part("line", Line), Part("column", Column));

    private static string Part(string word, int? number) =>
        number is { } n ? string.Create(CultureInfo.InvariantCulture, $", {word} {n}") : "";
}
