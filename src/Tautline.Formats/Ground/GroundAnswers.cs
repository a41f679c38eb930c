using System.Globalization;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground.Points;

namespace Tautline.Formats.Ground;

/// <summary>Puts answers, as texts, into options: "PNEZD", "keep", "leave-out", "#2", "EPSG:2264", "local:foot", "survey-foot".</summary>
public static class GroundAnswers
{
    private static readonly (string Word, LinearUnit Unit)[] Units =
        [("metre", LinearUnit.Metre), ("foot", LinearUnit.Foot), ("survey-foot", LinearUnit.SurveyFoot)];

    /// <summary>The options with an answer to one question; null when the text is no answer to it.</summary>
    public static GroundOptions? Apply(GroundOptions options, GroundQuestionKind question, string answer)
    {
        var text = answer.Trim();
        return question switch
        {
            GroundQuestionKind.Columns => ColumnOrder.Find(text) is { } order ? options with { Points = options.Points with { Columns = order } } : null,
            GroundQuestionKind.PlaceHolders => PlaceHoldersOf(text) is { } what ? options with { Points = options.Points with { PlaceHolders = what } } : null,
            GroundQuestionKind.Surface => text.Length > 0 ? options with { Surface = text } : null,
            GroundQuestionKind.System => SystemOf(text) is { } system ? options with { System = system } : null,
            _ => UnitOf(text) is { } unit ? options with { HeightUnit = unit } : null,
        };
    }

    /// <summary>"EPSG:2264", "2264" or "local:survey-foot"; null when it is none.</summary>
    public static CoordinateSystemChoice? SystemOf(string text)
    {
        var (kind, rest) = text.Split(':', 2) is [var k, var r] ? (k.Trim(), r.Trim()) : ("EPSG", text.Trim());
        if (kind.Equals("local", StringComparison.OrdinalIgnoreCase)) return UnitOf(rest) is { } unit ? CoordinateSystemChoice.Local(unit) : null;
        return kind.Equals("EPSG", StringComparison.OrdinalIgnoreCase) && int.TryParse(rest, NumberStyles.None, CultureInfo.InvariantCulture, out var code)
            ? CoordinateSystemChoice.Epsg(code)
            : null;
    }

    /// <summary>"metre", "foot" or "survey-foot"; null when it is none.</summary>
    public static LinearUnit? UnitOf(string text)
    {
        foreach (var (word, unit) in Units)
            if (word.Equals(text, StringComparison.OrdinalIgnoreCase)) return unit;
        return null;
    }

    internal static string OfUnit(LinearUnit unit) => Units.First(u => u.Unit == unit).Word;

    internal static string OfLocal(LinearUnit unit) => $"local:{OfUnit(unit)}";

    internal static string OfSystem(int code) => string.Create(CultureInfo.InvariantCulture, $"EPSG:{code}");

    internal static string Of(PlaceHolders what) => what == PlaceHolders.Keep ? "keep" : "leave-out";

    private static PlaceHolders? PlaceHoldersOf(string text) => text.ToUpperInvariant() switch
    {
        "KEEP" => PlaceHolders.Keep,
        "LEAVE-OUT" => PlaceHolders.LeaveOut,
        _ => null,
    };
}
