namespace Tautline.Formats.Coordinates;

/// <summary>A unit of length in a file. The two feet differ by two parts in a million, four feet at two million.</summary>
public enum LinearUnit
{
    Metre,

    /// <summary>International foot, 0.3048 m exactly.</summary>
    Foot,

    /// <summary>US survey foot, 1200/3937 m exactly.</summary>
    SurveyFoot,
}
