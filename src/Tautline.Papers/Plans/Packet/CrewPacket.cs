using System.Globalization;
using Tautline.Engine.Plans;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>
/// What goes out to the crew: a sheet for each run, both sides, and behind them the job's own sheet, stakes, posts, cuts, gates, loads and the list of checks.
/// Each sheet stands alone. Every number is read off the plan.
/// </summary>
public static class CrewPacket
{
    /// <param name="plan">A plan without errors.</param>
    /// <exception cref="ArgumentException">The plan has errors: there is nothing to build from.</exception>
    public static PaperDocument Of(Plan plan, PaperChoice choice) => OfAsync(plan, choice, PaperMaker.NoPause).GetAwaiter().GetResult();

    /// <param name="pause">Called after each sheet with how many are made, of how many.</param>
    public static async Task<PaperDocument> OfAsync(Plan plan, PaperChoice choice, Func<int, int, Task> pause)
    {
        if (plan.HasErrors) throw new ArgumentException("A plan with errors has no crew packet.", nameof(plan));
        var desk = new PacketDesk(plan, choice);
        List<Func<PaperSheet>> makers = [];
        foreach ((int line, LinePlan planned) in plan.Lines.Index())
            foreach ((int run, RunPlan _) in planned.Runs.Index())
                makers.Add(() => RunSheet.Of(desk, line, run));
        int runs = makers.Count;
        makers.Add(() => JobSheet.Of(desk, runs));
        makers.Add(() => SiteSheet.Of(desk));
        foreach ((int line, LinePlan planned) in plan.Lines.Index())
        {
            makers.Add(() => StakeSheet.Of(desk, line));
            makers.Add(() => PostSheet.Of(desk, line));
            foreach (int post in CutSheet.Terminals(planned)) makers.Add(() => CutSheet.Of(desk, line, post));
            foreach ((int gate, GatePlan _) in planned.Gates.Index()) makers.Add(() => GateSheet.Of(desk, line, gate));
        }

        if (plan.Takeoff.Count > 0) makers.Add(() => LoadSheet.Of(desk));
        makers.Add(() => CheckSheet.Of(desk));
        List<PaperSheet> sheets = [];
        foreach (Func<PaperSheet> maker in makers)
        {
            sheets.Add(maker());
            await pause(sheets.Count, makers.Count);
        }

        return new(choice.Say.Say("paper.packet", ("job", PaperSay.Job(plan)))) { Words = choice.Words, Format = choice.Format, Sheets = sheets, Footer = desk.Footer };
    }
}

/// <summary>What every sheet is made with.</summary>
internal sealed class PacketDesk(Plan plan, PaperChoice choice)
{
    private readonly string hash = PlanFile.Hash(plan);

    public Plan Plan => plan;

    public PaperChoice Choice => choice;

    public PaperSay Say { get; } = new(choice);

    public string Footer => choice.Say.Say("paper.footer", ("hash", hash[..16]));

    public string Mark(int line, int post) => PlanWords.Mark(line, plan.Lines[line].Posts[post]);

    /// <summary>What a camera reads: which job, which sheet, which plan. No address: the paper must mean the same with no signal.</summary>
    public string Code(string sheet) => string.Create(CultureInfo.InvariantCulture, $"TAUTLINE;job={Cut(plan.Job.Value, 60)};sheet={Cut(sheet, 40)};plan={hash[..12]}");

    private static string Cut(string text, int most) => new([.. text.Where(c => c is > ' ' and < (char)127 and not ';' and not '=').Take(most)]);

    public PaperSheet Sheet(string name, string code, int? line = null) => new(name)
    {
        Code = Code(code),
        Head = line is { } l ? [Say.Line(plan.Lines[l])] : [],
    };
}
