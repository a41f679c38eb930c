namespace Tautline.Engine.Quantities;

/// <summary>The units a length may be written in. <see cref="SurveyFoot"/> is the old US survey foot, 1200/3937 m.</summary>
public enum LengthUnit
{
    Metre,
    Centimetre,
    Millimetre,
    Foot,
    Inch,
    SurveyFoot,
}
