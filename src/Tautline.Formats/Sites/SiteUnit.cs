using System.Collections.Immutable;
using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Sites;

/// <summary>A unit that plan coordinates of a file may be in.</summary>
/// <param name="Word">As answers and flags say it: "survey-foot".</param>
/// <param name="Name">In full, plural.</param>
/// <param name="Metres">Metres in one.</param>
public sealed record SiteUnit(string Word, string Name, double Metres)
{
    public static readonly SiteUnit Metre = new("metre", "metres", 1);
    public static readonly SiteUnit Foot = new("foot", "international feet", 0.3048);
    public static readonly SiteUnit SurveyFoot = new("survey-foot", "US survey feet", 1200.0 / 3937);
    public static readonly SiteUnit Inch = new("inch", "inches", 0.0254);
    public static readonly SiteUnit Millimetre = new("millimetre", "millimetres", 0.001);
    public static readonly SiteUnit Centimetre = new("centimetre", "centimetres", 0.01);
    public static readonly SiteUnit Decimetre = new("decimetre", "decimetres", 0.1);
    public static readonly SiteUnit Kilometre = new("kilometre", "kilometres", 1000);
    public static readonly SiteUnit Yard = new("yard", "yards", 0.9144);
    public static readonly SiteUnit Mile = new("mile", "miles", 1609.344);

    /// <summary>All of them, likeliest first.</summary>
    public static ImmutableArray<SiteUnit> All { get; } =
        [Foot, SurveyFoot, Metre, Millimetre, Inch, Centimetre, Yard, Decimetre, Kilometre, Mile];

    /// <summary>The unit of a word such as "survey-foot"; null when it is none.</summary>
    public static SiteUnit? Find(string word) => All.FirstOrDefault(u => u.Word.Equals(word.Trim(), StringComparison.OrdinalIgnoreCase));

    internal static SiteUnit Of(LinearUnit unit) => unit switch
    {
        LinearUnit.Foot => Foot,
        LinearUnit.SurveyFoot => SurveyFoot,
        _ => Metre,
    };

    /// <summary>The same as one of the three units a job's frame may have; null for the others, whose numbers are brought to metres.</summary>
    internal LinearUnit? Linear => this == Foot ? LinearUnit.Foot : this == SurveyFoot ? LinearUnit.SurveyFoot : this == Metre ? LinearUnit.Metre : null;
}
