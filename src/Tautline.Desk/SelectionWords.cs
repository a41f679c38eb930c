using Tautline.Documents.Words;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Takeoff;

namespace Tautline.Desk;

/// <summary>What is selected, in words: its name, and what is said of it besides its figures.</summary>
public static class SelectionWords
{
    public static string Title(Session session, Phrases say) => Title(session, session.Selected, say);

    public static string Title(Session session, Selection at, Phrases say)
    {
        (string label, string subject) = Name(session, at, say);
        return label.Length == 0 ? say["details.job"] : say.Say("what." + label, ("id", subject));
    }

    public static IEnumerable<(string Label, string Text)> Lines(Session session, Phrases say) => session.Selected.Kind switch
    {
        SelectionKind.Post when Line(session) is { } line && Post(line, session.Selected.Index) is { } post => OfPost(session, line, post, say),
        SelectionKind.Bay when Line(session) is { } line && Post(line, session.Selected.Index) is { } post => OfBay(session, line, post, say),
        SelectionKind.Run when Line(session) is { } line && session.Selected.Index < line.Runs.Count => OfRun(session, line, say),
        SelectionKind.Gate when Line(session) is { } line && session.Selected.Index < line.Gates.Count => OfGate(session, line.Gates[session.Selected.Index], say),
        SelectionKind.Grading when Line(session) is { } line && session.Selected.Index < line.Grading.Count => OfGrading(session, line.Grading[session.Selected.Index], say),
        SelectionKind.Obstacle => OfObstacle(session, say),
        SelectionKind.TakeoffLine when session.Selected.Index < session.Plan.Takeoff.Count => OfTakeoff(session, session.Plan.Takeoff[session.Selected.Index], say),
        SelectionKind.Line when Line(session) is { } line => OfLine(session, line, say),
        SelectionKind.Limit when session.Plan.Basis.Rules.All.FirstOrDefault(l => l.Key == session.Selected.Id) is { } limit => OfLimit(session, limit, say),
        _ => [],
    };

    /// <summary>The name of a part in the language of the page; the catalogue's own where it has none.</summary>
    public static string Part(TakeoffLine line, Phrases say) => say.Or("part." + line.Part, line.Name);

    public static LinePlan? Line(Session session) => session.Plan.Lines.FirstOrDefault(l => l.Id == session.Selected.Line);

    private static PostPlan? Post(LinePlan line, int index) => index < line.Posts.Count ? line.Posts[index] : null;

    private static (string Label, string Subject) Name(Session session, Selection at, Phrases say) => at.Kind switch
    {
        SelectionKind.None => ("", ""),
        SelectionKind.Post => ("post", Mark(session, at, at.Index)),
        SelectionKind.Bay => ("bay", Mark(session, at, at.Index)),
        SelectionKind.Run => ("run", Numbered(session, at)),
        SelectionKind.TakeoffLine => ("takeoff", session.Plan.Takeoff.ElementAtOrDefault(at.Index)?.Name ?? ""),
        SelectionKind.Gate when session.Job.Gates.FirstOrDefault(g => g.Id.Value == at.Id) is { } gate => ("gate", say.Or("gate." + gate.Kind, gate.Kind)),
        SelectionKind.Obstacle when session.Job.Obstacles.FirstOrDefault(o => o.Id.Value == at.Id) is { } obstacle => ("obstacle", say.Or("obstacle." + obstacle.Kind, obstacle.Kind)),
        SelectionKind.Work when session.Job.Works.FirstOrDefault(w => w.Id.Value == at.Id) is { } work => ("work", say.Or("map.work." + work.Kind, work.Kind)),
        SelectionKind.Gate or SelectionKind.Obstacle or SelectionKind.Pin or SelectionKind.Work or SelectionKind.Spec or SelectionKind.Limit =>
            (at.Kind.ToString().ToLowerInvariant(), at.Id),
        SelectionKind.Line => ("line", Named(session, at)),
        _ => (at.Kind.ToString().ToLowerInvariant(), Numbered(session, at)),
    };

    private static string Numbered(Session session, Selection at) => PlanWords.Number(Front.Ordinal(at.Index), "0") + " · " + Named(session, at);

    private static string Named(Session session, Selection at) => session.Plan.Lines.FirstOrDefault(l => l.Id == at.Line) is { } line ? Named(line) : at.Line.Value;

    private static string Mark(Session session, Selection at, int post)
    {
        int line = SelectedFacts.LineIndex(session.Plan, at.Line);
        return line >= 0 && Post(session.Plan.Lines[line], post) is { } there ? PlanWords.Mark(line, there) : at.Line.Value;
    }

    private static IEnumerable<(string, string)> OfPost(Session session, LinePlan line, PostPlan post, Phrases say)
    {
        PlanWords words = session.Words;
        yield return (say["is.kind"], say.Or("kind." + PlanWords.Kind(post.Kind), PlanWords.Kind(post.Kind)));
        yield return (say["is.station"], $"{words.Station(post.Station)} · {Named(line)}");
        yield return (say["is.section"], post.Section);
        yield return (say["is.held"], words.Held(post));
        yield return (say["is.spec"], post.Spec.Value);
        if (post.GroundHeight is { } ground) yield return (say["is.ground"], words.Height(ground.Metres));
    }

    private static IEnumerable<(string, string)> OfBay(Session session, LinePlan line, PostPlan post, Phrases say)
    {
        int run = SelectedFacts.RunOf(session.Plan, session.Selected);
        yield return (say["is.from"], $"{session.Words.Station(post.Station)} · {Named(line)}");
        if (run < 0) yield break;
        yield return (say["is.run"], PlanWords.Number(line.Runs[run].Number, "0"));
        if (line.Runs[run].Fitted.FirstOrDefault(b => b.From == post.Station) is not { } bay) yield break;
        yield return (say["is.gap"], $"{session.Words.Signed(bay.LeastGap)} – {session.Words.Signed(bay.MostGap)}");
        yield return (say["is.top"], $"{session.Words.Height(bay.Top.Metres)} – {session.Words.Height(bay.TopTo.Metres)}");
    }

    private static IEnumerable<(string, string)> OfRun(Session session, LinePlan line, Phrases say)
    {
        int index = SelectedFacts.LineIndex(session.Plan, line.Id);
        yield return (say["is.line"], Named(line));
        foreach ((string label, string text) in HangRows.Of(session.Plan, index, session.Selected.Index, session.Words))
            yield return (say.Or("hang." + label, label), text);
    }

    private static IEnumerable<(string, string)> OfGate(Session session, GatePlan gate, Phrases say)
    {
        yield return (say["is.kind"], say["gate." + gate.Kind.ToString().ToLowerInvariant()]);
        yield return (say["is.opening"], session.Words.Long(gate.Opening));
        yield return (say["is.station"], session.Words.Station(gate.NearFace));
        yield return (say["is.section"], gate.Post);
        yield return (say["is.caution"], say.Or("caution.2", Cautions.All[2]));
    }

    private static IEnumerable<(string, string)> OfGrading(Session session, GradingPlan grading, Phrases say)
    {
        yield return (say["is.from"], session.Words.Station(grading.From));
        yield return (say["is.to"], session.Words.Station(grading.To));
        yield return (say["is.work"], session.Words.Grading(grading));
        yield return (say["is.caution"], say.Or("caution.0", Cautions.All[0]));
    }

    private static IEnumerable<(string, string)> OfObstacle(Session session, Phrases say)
    {
        if (session.Job.Obstacles.FirstOrDefault(o => o.Id.Value == session.Selected.Id) is not { } obstacle) yield break;
        yield return (say["is.kind"], say.Or("obstacle." + obstacle.Kind, obstacle.Kind));
        yield return (say["is.from"], session.Words.Long(obstacle.From));
        yield return (say["is.to"], session.Words.Long(obstacle.To));
        if (obstacle.Clearance.Metres > 0) yield return (say["is.clear"], session.Words.Long(obstacle.Clearance));
        if (obstacle.Note.Length > 0) yield return (say["is.note"], obstacle.Note);
    }

    private static IEnumerable<(string, string)> OfTakeoff(Session session, TakeoffLine line, Phrases say)
    {
        yield return (say["takeoff.part"], Part(line, say));
        if (session.Words.Size(line) is { Length: > 0 } size) yield return (say["takeoff.size"], size);
        yield return (say["takeoff.net"], session.Words.Net(line));
        yield return (say["takeoff.buy"], PlanWords.Purchase(line));
        if (session.Words.Remarks(line) is { Length: > 0 } remarks) yield return (say["takeoff.remarks"], remarks);
        yield return (say["is.source"], SourceText.Text(session.Catalog.Part(line.Part).From));
    }

    private static IEnumerable<(string, string)> OfLine(Session session, LinePlan line, Phrases say)
    {
        yield return (say["totals.length"], session.Words.Long(line.Along));
        yield return (say["is.closed"], say[line.Closed ? "yes" : "no"]);
        yield return (say["totals.posts"], PlanWords.Number(line.Posts.Count, "#,0"));
        yield return (say["is.runs"], PlanWords.Number(line.Runs.Count, "#,0"));
        if (line.Fit is { } fit)
            yield return (say["is.gap"], $"{session.Words.Signed(fit.LeastGap)} – {session.Words.Signed(fit.MostGap)}");
    }

    private static IEnumerable<(string, string)> OfLimit(Session session, Limit limit, Phrases say)
    {
        yield return (say["is.meaning"], limit.Rule.Meaning);
        yield return (say["why.value"], LimitText.Value(limit.Rule, limit.Value, session.Words.Units));
        yield return (say["rules.set"], limit.Set);
        yield return (say["is.source"], SourceText.Text(limit.From));
    }

    private static string Named(LinePlan line) => line.Name.Length > 0 ? line.Name : line.Id.Value;
}
