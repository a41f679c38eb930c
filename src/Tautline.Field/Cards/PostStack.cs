using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;

namespace Tautline.Field.Cards;

/// <summary>What slides on a terminal, in order: the plan's own stack.</summary>
public static class PostStack
{
    /// <summary>Every post that carries an end of fabric: index of its line and its own there.</summary>
    public static IReadOnlyList<(int Line, int Post)> Terminals(Plan plan)
        => [.. plan.Lines.SelectMany((line, l) => line.Runs.SelectMany(r => new[] { r.FromPost, r.ToPost }).Distinct().Order().Select(p => (l, p)))];

    /// <summary>The lowest thing first, cap or arm last; nothing for a post that carries no end of fabric.</summary>
    public static StackCard? Of(Plan plan, int line, int post) => HangCards.Stack(plan, line, post);
}
