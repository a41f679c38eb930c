namespace Tautline.Formats.Coordinates;

/// <summary>Conversions of <see cref="LinearUnit"/>.</summary>
public static class LinearUnits
{
    /// <summary>Metres of a length given in the unit.</summary>
    public static double ToMetres(this LinearUnit unit, double length) => unit switch
    {
        LinearUnit.Foot => length * 0.3048,
        LinearUnit.SurveyFoot => length * 1200 / 3937,
        _ => length,
    };

    /// <summary>The length in the unit, of metres.</summary>
    public static double FromMetres(this LinearUnit unit, double metres) => unit switch
    {
        LinearUnit.Foot => metres / 0.3048,
        LinearUnit.SurveyFoot => metres * 3937 / 1200,
        _ => metres,
    };

    /// <summary>The unit's name in full, plural.</summary>
    public static string Name(this LinearUnit unit) => unit switch
    {
        LinearUnit.Foot => "international feet",
        LinearUnit.SurveyFoot => "US survey feet",
        _ => "metres",
    };
}
