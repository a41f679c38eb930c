using System.Diagnostics;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Desk;

/// <summary>Makes papers of the plan on the desk, piece by piece, so that the page goes on drawing itself and says how far it is.</summary>
public sealed class PaperDesk(Session session, BrowserFiles files, Look look, Late late)
{
    /// <summary>How long the page is held at a time, in milliseconds.</summary>
    private const double Slice = 60;

    public static IReadOnlyList<PaperKind> Kinds { get; } = Enum.GetValues<PaperKind>();

    public event Action? Changed;

    /// <summary>The language of the papers; that of the page until another is chosen.</summary>
    public string Language { get => field.Length > 0 ? field : look.Say.Language; set; } = "";

    /// <summary>Nothing until one is chosen: then what suits the job's units.</summary>
    public PaperSize? Size { get; set; }

    public PaperSize Chosen => Size ?? (session.Job.Units == UnitSystem.Metric ? PaperSize.A4 : PaperSize.Letter);

    /// <summary>What is under way, with how far it is; empty where nothing is.</summary>
    public string Busy { get; private set; } = "";

    /// <summary>What was made last, in words.</summary>
    public string Status { get; private set; } = "";

    /// <summary>Signs the typeface lacked in what was made last.</summary>
    public string Missing { get; private set; } = "";

    public Task PdfAsync(PaperKind kind) => DoAsync($"{kind}".ToLowerInvariant() + ".pdf", async () =>
    {
        await late.PaperAsync();
        await late.FormatsAsync();
        PrintedPaper printed = await PaperPress.PdfAsync(kind, session.Plan, session.Job.Units, Words, Chosen, new Pauses(this, look.Say).After);
        Missing = printed.UnknownCharacters;
        return ("application/pdf", printed.Pdf);
    });

    public Task CalculationAsync(FactKey fact) => DoAsync("calculation.pdf", async () =>
    {
        await late.PaperAsync();
        return ("application/pdf", PaperPress.Calculation(session.Plan, fact, session.Job.Units, Words, Chosen).Pdf);
    });

    /// <param name="before">The job as it was.</param>
    /// <returns>False where the job as it was cannot be planned: nothing is compared then.</returns>
    public async Task<bool> RevisionAsync(Job before)
    {
        Plan old = JobPlanner.Plan(before, FenceCatalog.BuiltIn(), RuleSets.For(before), BuiltFacts.None);
        if (old.HasErrors || session.Plan.HasErrors) return false;
        await DoAsync("revision.pdf", async () =>
        {
            await late.PaperAsync();
            return ("application/pdf", PaperPress.Revision(old, session.Plan, session.Job.Units, Words, Chosen).Pdf);
        });
        return true;
    }

    /// <summary>A paper of a screen that came late itself.</summary>
    /// <param name="ending">Of the file's name, behind the job's.</param>
    /// <param name="make">From its language and size; called once the writer of PDF is there.</param>
    public Task PrintAsync(string ending, Func<Phrases, PaperSize, PrintedPaper> make) => DoAsync(ending, async () =>
    {
        await late.PaperAsync();
        PrintedPaper printed = make(Words, Chosen);
        Missing = printed.UnknownCharacters;
        return ("application/pdf", printed.Pdf);
    });

    public Task SvgAsync() => DoAsync("site.svg", async () =>
    {
        await late.PaperAsync();
        return ("image/svg+xml", PaperPress.Svg(session.Plan, session.Job.Units, Words, Chosen, session.Job.Name));
    });

    public Task DxfAsync() => DoAsync("site.dxf", async () =>
    {
        await late.PaperAsync();
        return ("image/vnd.dxf", PaperPress.Dxf(session.Plan, session.Job.Units, Words, Chosen));
    });

    public Task TablesAsync() => DoAsync("tables.xlsx", async () =>
    {
        await late.PaperAsync();
        await late.TablesAsync();
        return ("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", await PaperPress.XlsxAsync(session.Plan, session.Job.Units, Words));
    });

    private Phrases Words => Phrases.Of(Language);

    private async Task DoAsync(string ending, Func<Task<(string Kind, byte[] Bytes)>> make)
    {
        if (Busy.Length > 0) return;
        (Busy, Status, Missing) = (look.Say["busy.printing"], "", "");
        Changed?.Invoke();
        await Task.Delay(1); // so that the word is shown before the page's only thread is held
        try
        {
            await late.SpeakAsync(Language);
            (string kind, byte[] bytes) = await make();
            string name = $"{session.PlainName}-{ending}";
            await files.SaveAsync(name, kind, bytes);
            Status = look.Say.Say("done.saved", ("file", name));
        }
        finally
        {
            Busy = "";
            Changed?.Invoke();
        }
    }

    /// <summary>Lets the page draw itself between pieces of work.</summary>
    private sealed class Pauses(PaperDesk desk, Phrases say)
    {
        private long last = Stopwatch.GetTimestamp();

        public async Task After(string key, int n, int of)
        {
            if (Stopwatch.GetElapsedTime(last).TotalMilliseconds < Slice) return;
            desk.Busy = say.Say(key, ("n", n), ("of", of));
            desk.Changed?.Invoke();
            await Task.Delay(1);
            last = Stopwatch.GetTimestamp();
        }
    }
}
