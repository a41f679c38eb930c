using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Checks what dresses the fabric: its edges, its colour, slats, screen and concertina.</summary>
internal static class SpecDress
{
    private static readonly Length coarse = Length.FromInches(2);
    private static readonly Length low = Length.FromInches(60);

    /// <summary>Upper and lower edge: knuckled both under 2-in mesh and up to 60 in, else twisted below (ASTM A392, from memory).</summary>
    public static string Selvage(Spec spec, Length width)
        => spec.Selvage ?? (Fine(spec) || width.Nanometres <= low.Nanometres ? "KK" : "KT");

    public static void Check(Spec spec, Length height, string path, ProblemList problems)
    {
        var mesh = spec.Mesh ?? coarse;
        if (spec.Selvage?.Contains('T') == true && Fine(spec)) problems.Add(ProblemCode.SelvageTwistMesh, new($"{path}.selvage"), mesh);
        else if (spec.Selvage is ['T', _] && height.Nanometres <= low.Nanometres) problems.Add(ProblemCode.SelvageLow, new($"{path}.selvage"), height);
        if (spec is { Colour: not null, Coating: not (null or "polymer") })
            problems.Add(ProblemCode.SpecChoice, new($"{path}.coating"), spec.Coating!, "\"polymer\", or leave the colour out");
        if (spec.Slats is not null || spec.Screen is not null) problems.Add(ProblemCode.ScreenWind, new(path), spec.Id.Value);
        if (!Fits(spec, height)) problems.Add(ProblemCode.ScreenHeight, new(path), spec.Screen?.Height ?? Length.Zero, height);
    }

    private static bool Fine(Spec spec) => (spec.Mesh ?? coarse).Nanometres < coarse.Nanometres;

    private static bool Fits(Spec spec, Length height)
        => (spec.Screen is not { } screen || (screen.Height.Metres > 0 && screen.Height.Nanometres <= height.Nanometres && screen.Roll is not { Metres: <= 0 }))
           && spec.Slats is not { PerTenFeet: not (> 0 and < 1000) }
           && (spec.Concertina is not { } coil || (coil.Covers.Metres > 0.1 && coil.TieSpacing.Metres > 0.01));
}
