using Tautline.Documents.Words;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;

namespace Tautline.Web.Desk;

/// <summary>Figures of the plan in the words of the cards.</summary>
public static class CardSay
{
    /// <summary>The hole, or how the post is held without one.</summary>
    public static string Held(Phrases say, PlanWords words, PostPlan post) => post.Support switch
    {
        Support.Standing => say["cards.held.stands"],
        Support.Plated => say["cards.held.plate"],
        Support.Bracketed => say.Say("cards.held.brackets", ("n", post.Brackets ?? 0)),
        Support.Driven => say.Say("cards.held.driven", ("depth", words.Short(post.HoleDepth))),
        Support.Cored => say.Say("cards.held.core", ("hole", words.Hole(post.HoleDiameter, post.HoleDepth))),
        _ => say.Say("cards.held.hole", ("hole", words.Hole(post.HoleDiameter, post.HoleDepth))),
    };
}
