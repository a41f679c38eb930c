using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>Which of two ways of counting asks for more.</summary>
public enum Tighter { Neither, Inches, Diamonds }

/// <summary>Bands on a terminal or ties on a line post: what the limit asks and what crews do, side by side.</summary>
/// <param name="Held">What the plan takes: the tighter count, placed.</param>
/// <param name="ByInches">Count by the limit in inches alone.</param>
/// <param name="ByDiamonds">Count by whole diamonds within the limit.</param>
/// <param name="HeldSpace">Largest space of what is held, by the mean diamond.</param>
/// <param name="Practice">What crews do (common practice, no source); null for heights it is not known for.</param>
/// <param name="PracticeSpace">Its largest space.</param>
public sealed record FasteningChoice(
    FasteningSet Held, int ByInches, int ByDiamonds, Length HeldSpace, Limit Limit, FasteningSet? Practice, Length? PracticeSpace)
{
    public Tighter Tighter => ByInches > ByDiamonds ? Tighter.Inches : ByDiamonds > ByInches ? Tighter.Diamonds : Tighter.Neither;

    public bool PracticeOverLimit => PracticeSpace is { } space && space.Nanometres > Limit.Length.Nanometres;

    /// <param name="bar">Length of the tension bar; for ties that of the post's stretch of fabric, the same.</param>
    public static FasteningChoice Of(ResolvedSpec spec, Length bar, Limit limit)
    {
        var byInches = (int)Fastening.ByInches(new Plain(bar.Metres), spec.Rules, limit).Value;
        var byDiamonds = (int)Fastening.ByDiamonds<Plain>(spec, limit).Value;
        var held = Fastening.Positions(spec, Math.Max(byInches, byDiamonds), limit);
        var (practice, pitch) = (Fastening.Habit(spec), new Length(Fastening.Pitch<Plain>(spec).Value));
        return new FasteningChoice(held, byInches, byDiamonds, held.LargestSpace * pitch, limit, practice, practice?.LargestSpace * pitch);
    }
}

/// <summary>Rings on a tension wire or ties on a rail: every so many diamonds, by the limit and by practice.</summary>
/// <param name="Every">Whole diamonds within the limit at the widest diamond; at least one.</param>
/// <param name="SpaceLow">That many of the narrowest diamonds.</param>
/// <param name="SpaceHigh">That many of the widest diamonds.</param>
/// <param name="PracticeEvery">What crews do (common practice, no source); null where nothing is known.</param>
public sealed record AlongChoice(int Every, Length SpaceLow, Length SpaceHigh, Limit Limit, int? PracticeEvery, Length? PracticeLow, Length? PracticeHigh)
{
    /// <summary>Crews ring every nine diamonds, common practice, no source.</summary>
    private const int RingHabit = 9;

    public bool PracticeOverLimit => PracticeHigh is { } space && space.Nanometres > Limit.Length.Nanometres;

    public static AlongChoice Rings(ResolvedSpec spec) => Of(spec, spec.Rules.RingMax, RingHabit);

    /// <summary>Ties on the top rail; a middle or brace rail is tied like it, all with a smaller tie than the posts (common practice, no source).</summary>
    public static AlongChoice RailTies(ResolvedSpec spec) => Of(spec, spec.Rules.TieRailMax, null);

    private static AlongChoice Of(ResolvedSpec spec, Limit limit, int? practice)
    {
        var every = (int)MeshFormulas.Every<Plain>(spec, limit).Value;
        var (low, high) = (new Length(2 * MeshFormulas.AdvanceLow<Plain>(spec).Value), new Length(2 * MeshFormulas.AdvanceHigh<Plain>(spec).Value));
        return new AlongChoice(every, every * low, every * high, limit, practice, practice * low, practice * high);
    }
}
