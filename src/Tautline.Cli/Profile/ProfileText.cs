using Tautline.Cli.Terminal;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Profile;

/// <summary>The profile of each line for people.</summary>
internal static class ProfileText
{
    public static string Write(Engine.Plans.Plan plan, PlanWords words, Paper paper)
    {
        for (var i = 0; i < plan.Lines.Count; i++) Line(plan, i, words, paper);
        paper.Heading("Caution");
        paper.Line(Cautions.Digging);
        return paper.ToString();
    }

    private static void Line(Engine.Plans.Plan plan, int index, PlanWords words, Paper paper)
    {
        var line = plan.Lines[index];
        var name = line.Name.Length > 0 ? $"Line {line.Id}, {line.Name}" : $"Line {line.Id}";
        if (line.Fit is null)
        {
            paper.Heading($"{name}: no ground was measured; the line runs on the grades of its legs.");
            return;
        }
        var ground = plan.Basis.Lines[index].Site.Chain.Ground!.Vertices;
        paper.Heading($"{name}: {words.Long(line.Level)} level, {words.Long(line.Along)} along the ground, "
                      + $"ground {words.Height(ground.Min(v => v.Height))} to {words.Height(ground.Max(v => v.Height))}, {PlanWords.Count(ground.Count, "corner")}");
        Posts(line, index, words, paper);
        LineGround.Write(line, words, paper);
    }

    private static void Posts(LinePlan line, int index, PlanWords words, Paper paper)
    {
        var gaps = line.Runs.SelectMany(r => r.Fitted).ToDictionary(b => b.From.Nanometres);
        paper.Table(
            [">post", ">station", "kind", ">ground", ">top of post", ">over ground", ">order", ">gap to the next post"],
            line.Posts.Select(IReadOnlyList<string> (p) =>
            [
                PlanWords.Mark(index, p), words.Station(p.Station), PlanWords.Kind(p.Kind), words.Height(p.GroundHeight!.Value.Metres),
                words.Height(p.TopHeight!.Value.Metres), words.Long(p.AboveGround), p.Support == Support.Standing ? "" : words.Long(p.OrderLength),
                gaps.TryGetValue(p.Station.Nanometres, out var bay) ? $"{words.Signed(bay.LeastGap)} to {words.Signed(bay.MostGap)}" : "",
            ]));
    }
}
