using System.Diagnostics;
using System.Text;
using Tautline.Documents.Paper;
using Tautline.Documents.Plans;
using Tautline.Documents.Plans.Office;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;

namespace Tautline.Web.Desk;

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
        var pause = new Pauses(this, look.Say);
        PaperDocument paper = await Papers.OfAsync(kind, session.Plan, Choice(), (n, of) => pause.After("papers.sheet", n, of));
        PrintedPaper printed = await PdfWriter.WriteAsync(paper, (n, of) => pause.After("papers.page", n, of));
        Missing = printed.UnknownCharacters;
        return ("application/pdf", printed.Pdf);
    });

    public Task SvgAsync() => DoAsync("site.svg", () => Task.FromResult(("image/svg+xml", Encoding.UTF8.GetBytes(SvgWriter.File(DrawingPaper.SiteScene(session.Plan, Choice(stakes: false))!, session.Job.Name)))));

    public Task DxfAsync() => DoAsync("site.dxf", () => Task.FromResult(("image/vnd.dxf", DxfWriter.Write(DrawingPaper.SiteScene(session.Plan, Choice(stakes: false))!, session.Job.Units))));

    public Task TablesAsync() => DoAsync("tables.xlsx", async () =>
    {
        await late.TablesAsync();
        return ("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", await XlsxWriter.WriteAsync(PlanBook.Of(session.Plan, Choice(stakes: false))));
    });

    private PaperChoice Choice(bool stakes = true) => new(session.Job.Units, Phrases.Of(Language), new(Chosen)) { Stakes = stakes ? Stakes() : null };

    private StakeTable Stakes()
    {
        StakeList stakes = StakeLister.Of(session.Plan, session.Job.Units);
        return new(stakes.Unit.Name(), stakes.System ?? "", [.. stakes.Stakes.Select(s => new StakeRow(s.Point, s.Northing, s.Easting, s.Elevation))]);
    }

    private async Task DoAsync(string ending, Func<Task<(string Kind, byte[] Bytes)>> make)
    {
        if (Busy.Length > 0) return;
        (Busy, Status, Missing) = (look.Say["busy.printing"], "", "");
        Changed?.Invoke();
        await Task.Delay(1); // so that the word is shown before the page's only thread is held
        try
        {
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
