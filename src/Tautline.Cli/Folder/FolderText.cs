using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Folder;

/// <summary>A line for each job of a folder, and the sums.</summary>
internal static class FolderText
{
    private const int HashDigits = 12;

    public static string Write(FolderSummary all, Paper paper)
    {
        paper.Heading($"Jobs in {all.Folder}");
        paper.Table(
            ["job", ">lines", $">fence, {(all.Units == UnitSystem.Metric ? "m" : "ft")}", ">posts", ">gates", ">errors", ">warnings", ">questions", ">notes", "plan hash, or why there is none"],
            [.. all.Jobs.Select(j => Row(j.File, j.Totals, j.Count, j.Why ?? j.Hash![..HashDigits], all.Units)), Totals(all)]);
        paper.Line();
        if (all.Others > 0) paper.Line($"{PlanWords.Count(all.Others, "other file")} passed over: no .tape, and no .json that says \"format\": \"tautline-job\".");
        if (all.Jobs.Any(j => j.Written is not null)) paper.Line($"{PlanWords.Count(all.Jobs.Count(j => j.Written is not null), "plan")} written.");
        return paper.ToString();
    }

    private static IReadOnlyList<string> Totals(FolderSummary all)
        => Row("total", all.Totals, all.Count, $"{all.Planned.Count()} of {all.Jobs.Count} planned", all.Units);

    private static IReadOnlyList<string> Row(string name, PlanTotals? totals, Func<Severity, int> count, string last, UnitSystem units) =>
    [
        name, Number(totals?.Lines), totals is null ? "" : PlanWords.Number(units == UnitSystem.Metric ? totals.Fence.Metres : totals.Fence.Feet, "#,0.0"),
        Number(totals?.Posts), Number(totals?.Gates), Number(count(Severity.Error)), Number(count(Severity.Warning)), Number(count(Severity.Question)),
        Number(count(Severity.Note)), last,
    ];

    private static string Number(int? number) => number is { } some ? PlanWords.Number(some, "#,0") : "";
}
