using Tautline.Documents.Words;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Desk;

/// <summary>One figure of what is selected, which can be asked 'why'.</summary>
public sealed record FactRow(FactKey Key, string Name, string Value);

/// <summary>Figures of one thing under a heading; the heading is empty for the thing itself.</summary>
public sealed record FactGroup(string Heading, IReadOnlyList<FactRow> Rows);

/// <summary>The figures of what is selected.</summary>
public static class SelectedFacts
{
    private static readonly HashSet<FactKind> unsaid = [FactKind.Stands, FactKind.RunEnds, FactKind.FabricEnd, FactKind.GateStands, FactKind.WorkStands];

    private static readonly FactKind[] ofPost = Range(FactKind.Stands, FactKind.PostTies);
    private static readonly FactKind[] ofRun = Range(FactKind.RunAlong, FactKind.ConcertinaTies);
    private static readonly FactKind[] ofEnd = Range(FactKind.FabricEnd, FactKind.ColumnsHigh);
    private static readonly FactKind[] ofGate = Range(FactKind.GateStands, FactKind.Leaves);
    private static readonly FactKind[] ofWork = Range(FactKind.WorkStands, FactKind.WorkVolume);
    private static readonly FactKind[] ofGrading = Range(FactKind.GradingLength, FactKind.GradingVolume);
    private static readonly FactKind[] ofTakeoff = Range(FactKind.Net, FactKind.Spare);
    private static readonly FactKind[] ofSpec = Range(FactKind.HalfDiamond, FactKind.RingEvery);

    public static IReadOnlyList<FactGroup> Of(Plan plan, Selection at, PlanWords words, Phrases say)
    {
        int line = LineIndex(plan, at.Line);
        FactGroup Group(string heading, FactKind[] kinds, int of, int item = 0, int end = 0) => new(heading, Rows(plan, kinds, new(default, of, item, end), words, say));
        IEnumerable<FactGroup> groups = at.Kind switch
        {
            SelectionKind.Post when line >= 0 => [Group("", ofPost, line, at.Index)],
            SelectionKind.Run when line >= 0 => [Group("", ofRun, line, at.Index), Group(say["end.start"], ofEnd, line, at.Index), Group(say["end.finish"], ofEnd, line, at.Index, 1)],
            SelectionKind.Bay when RunOf(plan, at) is var run and >= 0 => [Group("", ofRun, line, run)],
            SelectionKind.Gate when line >= 0 => [Group("", ofGate, line, at.Index)],
            SelectionKind.Grading when line >= 0 => [Group("", ofGrading, line, at.Index)],
            SelectionKind.Work when line >= 0 => [Group("", ofWork, line, at.Index)],
            SelectionKind.TakeoffLine => [Group("", ofTakeoff, at.Index)],
            SelectionKind.Spec when SpecIndex(plan, at.Id) is var spec and >= 0 => [Group("", ofSpec, spec)],
            _ => [],
        };
        return [.. groups.Where(g => g.Rows.Count > 0)];
    }

    /// <summary>Index of a line in the plan; -1 where it is not there.</summary>
    public static int LineIndex(Plan plan, LineId id)
    {
        for (int i = 0; i < plan.Lines.Count; i++)
            if (plan.Lines[i].Id == id) return i;
        return -1;
    }

    /// <summary>Index of the run a bay is in; -1 where it is none's, as in an opening.</summary>
    public static int RunOf(Plan plan, Selection bay)
    {
        if (LineIndex(plan, bay.Line) is var line && line < 0) return -1;
        IReadOnlyList<RunPlan> runs = plan.Lines[line].Runs;
        for (int i = 0; i < runs.Count; i++)
            if (runs[i].FromPost <= bay.Index && (bay.Index < runs[i].ToPost || runs[i].ToPost <= runs[i].FromPost)) return i;
        return -1;
    }

    public static string Name(FactKind kind, Phrases say) => say.Or("fact." + FactNames.Of(kind), FactNames.Of(kind).Replace('-', ' '));

    private static int SpecIndex(Plan plan, string id)
    {
        for (int i = 0; i < plan.Specs.Count; i++)
            if (plan.Specs[i].Id.Value == id) return i;
        return -1;
    }

    private static FactKind[] Range(FactKind first, FactKind last) =>
        [.. Enum.GetValues<FactKind>().Where(k => k >= first && k <= last && !unsaid.Contains(k))];

    /// <summary>Figures that are nothing, as the barbed wire of a fence without, are left out.</summary>
    private static List<FactRow> Rows(Plan plan, FactKind[] kinds, FactKey of, PlanWords words, Phrases say)
    {
        List<FactRow> rows = [];
        foreach (FactKind kind in kinds)
        {
            FactKey key = of with { Kind = kind };
            if (Facts.Value(plan, key) is null or 0 || Facts.Why(plan, key) is not { } expr) continue;
            rows.Add(new(key, Name(kind, say), Value(expr, words)));
        }

        return rows;
    }

    private static string Value(Expr expr, PlanWords words) => (expr.Unit.Metre, expr.Unit.Kilogram) switch
    {
        (1, 0) when Math.Abs(expr.Value) >= 1.5 => words.Long(new Length(expr.Value)),
        (1, 0) => words.Short(new Length(expr.Value)),
        (2, 0) => words.Area(new Area(expr.Value)),
        (3, 0) => words.Volume(new Volume(expr.Value)),
        (0, 1) => words.Mass(new Mass(expr.Value)),
        _ => ExprText.Value(expr.Value, expr.Unit, words.Units),
    };
}
