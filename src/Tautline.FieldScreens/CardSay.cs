using Tautline.Documents.Words;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;

namespace Tautline.FieldScreens;

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

    /// <summary>Posts of a line that follow one another as from and to: 'A1 – A4, A7'.</summary>
    public static string Marks(IReadOnlyList<(int Line, int Post, string Mark)> posts)
    {
        List<string> told = [];
        for (int i = 0, from = 0; i < posts.Count; i++)
        {
            if (i + 1 < posts.Count && posts[i + 1].Line == posts[i].Line && posts[i + 1].Post == posts[i].Post + 1) continue;
            told.Add(i == from ? posts[i].Mark : i == from + 1 ? $"{posts[from].Mark}, {posts[i].Mark}" : $"{posts[from].Mark} – {posts[i].Mark}");
            from = i + 1;
        }

        return string.Join(", ", told);
    }

    /// <summary>Cents as whole money, '1,234.50', without a sign: the job names no currency.</summary>
    public static string Money(long cents) => (cents / 100m).ToString("#,0.00", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A change that was agreed, in one sentence.</summary>
    public static string Change(Phrases say, Tautline.Field.Log.LogEntry entry) => say.Say(
        "cards.change.told", ("words", entry.Text), ("quantity", entry.Changed!.Quantity.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture)), ("unit", entry.Changed.Unit),
        ("price", Money(entry.Changed.UnitCents)), ("total", Money(entry.Changed.TotalCents)), ("signer", entry.Changed.Signer), ("place", entry.Place?.Called ?? ""));
}
