namespace Tautline.Engine.Quantities;

/// <summary>How units of length are written, and what they are worth.</summary>
internal static class LengthUnits
{
    /// <summary>The unit a token names, or null.</summary>
    public static LengthUnit? Named(TextToken token) => token.Kind switch
    {
        TokenKind.FootMark => LengthUnit.Foot,
        TokenKind.InchMark => LengthUnit.Inch,
        TokenKind.Word => NamedByWord(token),
        _ => null,
    };

    public static decimal Nanometres(decimal count, LengthUnit unit) => unit switch
    {
        LengthUnit.Metre => count * 1_000_000_000m,
        LengthUnit.Centimetre => count * 10_000_000m,
        LengthUnit.Millimetre => count * 1_000_000m,
        LengthUnit.Foot => count * Length.NmPerFoot,
        LengthUnit.Inch => count * Length.NmPerInch,
        LengthUnit.SurveyFoot => count * 1_200_000_000_000m / 3937m,
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "Not a unit of length."),
    };

    private static LengthUnit? NamedByWord(TextToken word)
    {
        if (word.IsWord("ft", "foot", "feet")) return LengthUnit.Foot;
        if (word.IsWord("in", "inch", "inches")) return LengthUnit.Inch;
        if (word.IsWord("m", "metre", "metres", "meter", "meters")) return LengthUnit.Metre;
        if (word.IsWord("cm")) return LengthUnit.Centimetre;
        if (word.IsWord("mm")) return LengthUnit.Millimetre;
        return word.IsWord("ftUS", "usft") ? LengthUnit.SurveyFoot : null;
    }
}
