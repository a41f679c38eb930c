using Tautline.Documents.Words;
using Tautline.Engine.Editing;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Desk.Map;

/// <summary>What stands under the keyboard's place, in one sentence.</summary>
public static class MapWords
{
    public static string Of(Session session, Selection at, Phrases say)
    {
        int index = session.Plan.Lines.Select((l, i) => (l.Id, i)).FirstOrDefault(l => l.Id == at.Line, (default, -1)).Item2;
        if (at.Kind == SelectionKind.Post && index >= 0 && at.Index < session.Plan.Lines[index].Posts.Count)
        {
            PostPlan post = session.Plan.Lines[index].Posts[at.Index];
            string kind = PlanWords.Kind(post.Kind);
            return $"{PlanWords.Mark(index, post)}, {say.Or("kind." + kind, kind)}, {session.Words.Station(post.Station)}";
        }

        if (at.Kind == SelectionKind.Vertex && session.Job.Lines.FirstOrDefault(l => l.Id == at.Line) is { } line)
        {
            LineShape shape = LineShape.Of(line);
            if (at.Index >= shape.Vertices.Count) return "";
            string turn = shape.TurnAt(at.Index) is { } degrees ? AngleText.Format(degrees) : say["map.end"];
            return $"{say.Say("map.corner", ("n", at.Index + 1))}, {turn}, {session.Words.Station(Length.FromNanometres(shape.StartsNm[Math.Min(at.Index, shape.StartsNm.Count - 1)]))}";
        }

        return at.Kind == SelectionKind.None ? "" : at.Id;
    }
}
