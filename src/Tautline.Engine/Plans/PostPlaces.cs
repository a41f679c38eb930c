using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

/// <summary>Where a plan's posts stand, said in a way that outlives the plan: on their leg, and by the top they are set for.</summary>
public static class PostPlaces
{
    /// <summary>A line post as if it were built where the plan has it; nothing for a terminal, whose place is the line's own.</summary>
    /// <param name="line">Index of the line.</param>
    /// <param name="post">Index of the post in its line.</param>
    public static BuiltPost? AsPlanned(Plan plan, int line, int post, BuiltPostId id)
    {
        var placed = plan.Basis.Lines[line].Posts[post];
        var leg = plan.Basis.Lines[line].Site.Chain.LegFrom(placed.StationNm);
        if (placed.Kind != PostKind.Line || leg.Leg is null) return null;
        return new(id, leg.Leg.Id, Length.FromNanometres(placed.StationNm - leg.StartNm), placed.Rise is { } rise ? new Length(rise.Fabric) : null);
    }

    /// <summary>Every line post of a plan as if it were built.</summary>
    public static BuiltFacts AllAsPlanned(Plan plan)
        => new([.. plan.Lines.SelectMany((l, line) => l.Posts.Select((_, post) => AsPlanned(plan, line, post, new($"built-{line}.{post}"))).OfType<BuiltPost>())]);
}
