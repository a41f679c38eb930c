using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>The job's own sheet: what, where, whom to call, what lies in the ground, what holds everywhere.</summary>
internal static class JobSheet
{
    /// <summary>Blank rows for tickets: one is never enough.</summary>
    private const int Tickets = 4;

    public static PaperSheet Of(PacketDesk desk, int runs)
    {
        (PaperSay say, Plan plan) = (desk.Say, desk.Plan);
        PlanTotals totals = PlanTotals.Of(plan);
        return desk.Sheet(say["paper.job"], "job") with
        {
            Blocks =
            [
                new PaperBlock.Facts(
                    [
                        (say["paper.job.fence"], say.Words.Long(totals.Fence)), (say["paper.job.posts"], PaperSay.Number(totals.Posts)),
                        (say["paper.job.gates"], PaperSay.Number(totals.Gates)), (say["paper.job.runs"], PaperSay.Number(runs)),
                    ],
                    2),
                new PaperBlock.Heading(say["paper.job.spec"]),
                .. plan.Specs.Select(s => new PaperBlock.Words(say.Made(s, plan), Mark: s.Id.Value)),
                new PaperBlock.Words(say.Say.Say("paper.job.rules", ("name", plan.Basis.Rules.Name), ("title", plan.Basis.Rules.Title))),
                new PaperTable(say["paper.job.where"], [new(say["paper.job.site"], ColumnAlign.Blank), new(say["paper.job.access"], ColumnAlign.Blank)], [[" ", " "], [" ", " "]]),
                new PaperTable(
                    say["paper.job.contacts"], [new(say["paper.job.role"]), new(say["paper.job.name"], ColumnAlign.Blank), new(say["paper.job.phone"], ColumnAlign.Blank)],
                    [[say["paper.job.foreman"], "", ""], [say["paper.job.office"], "", ""], [say["paper.job.owner"], "", ""], [say["paper.job.hospital"], "", ""]]),
                new PaperTable(
                    say["paper.job.tickets"],
                    [new(say["paper.job.ticket"], ColumnAlign.Blank), new(say["paper.job.covers"], ColumnAlign.Blank), new(say["paper.job.validFrom"], ColumnAlign.Blank), new(say["paper.job.validTo"], ColumnAlign.Blank), new(say["paper.job.marked"], ColumnAlign.Tick)],
                    [.. Enumerable.Range(0, Tickets).Select(_ => (IReadOnlyList<string>)["", "", "", "", ""])]),
                new PaperBlock.Words(say["paper.job.private"]),
                .. Problems(plan, say),
            ],
            Cautions = say.Cautions(0, 1, 2, 3, 4),
        };
    }

    /// <summary>Warnings in English wherever the calculation has no other words for them yet.</summary>
    private static IEnumerable<PaperBlock> Problems(Plan plan, PaperSay say)
    {
        List<Problem> told = [.. plan.Problems.Where(p => p.Severity == Severity.Warning)];
        if (told.Count == 0) yield break;
        yield return new PaperBlock.Heading(say["paper.job.warnings"]);
        foreach (Problem problem in told) yield return new PaperBlock.Words($"{ProblemText.Message(problem, say.Words.Units)} {ProblemText.Hint(problem, say.Words.Units)}", Mark: "!");
    }
}
