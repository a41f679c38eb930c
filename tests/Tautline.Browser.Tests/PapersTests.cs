using System.Text;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Engine.Plans;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;

namespace Tautline.Browser.Tests;

/// <summary>Papers made in the page.</summary>
[Trait("Category", "Slow")]
public sealed class PapersTests(BrowserSite site)
{
    private static Task<(string FileName, byte[] Bytes)> MakeAsync(Visit visit, string name) =>
        visit.SavedAsync(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).ClickAsync());

    [Fact]
    public async Task ThePacketIsMadeInThePageTheSameAsOnTheServerWithoutSignal()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Papers");
        await MakeAsync(visit, "Take-off as PDF");
        await visit.Context.SetOfflineAsync(true);
        await visit.Page.GetByLabel("Language", new() { Exact = true }).SelectOptionAsync("es");
        (string name, byte[] bytes) = await MakeAsync(visit, "Crew packet as PDF");
        await visit.Context.SetOfflineAsync(false);
        Plan plan = OnTheServer.Plan("level-yard.json");
        var choice = new PaperChoice(plan.Basis.Job.Units, Phrases.Of("es"), new(PaperSize.Letter)) { Stakes = OnTheServer.Stakes(plan) };

        Assert.Equal("level-yard-packet.pdf", name);
        Assert.Equal(PdfWriter.Write(PaperMaker.Of(PaperKind.Packet, plan, choice)).Pdf, bytes);
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Status).Filter(new() { HasText = "level-yard-packet.pdf was made." })).ToBeVisibleAsync();
        await visit.ShootAsync("papers");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task TheSitePlanIsADrawingFileAndTablesASpreadsheet()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Papers");
        (string dxfName, byte[] dxf) = await MakeAsync(visit, "Site plan as DXF");
        (string svgName, byte[] svg) = await MakeAsync(visit, "Site plan as SVG");
        (string xlsxName, byte[] xlsx) = await MakeAsync(visit, "Tables as XLSX");

        Assert.Equal(("level-yard-site.dxf", "level-yard-site.svg", "level-yard-tables.xlsx"), (dxfName, svgName, xlsxName));
        Assert.Contains("AC1015", Encoding.UTF8.GetString(dxf), StringComparison.Ordinal);
        Assert.Contains("1 in = 20 ft", Encoding.UTF8.GetString(svg), StringComparison.Ordinal);
        Assert.Equal("PK"u8.ToArray(), xlsx[..2]);
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AReasonIsPrintedAsASheetAndAVersionComparedWithThePresent()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Take-off");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "chain-link fabric" }).First.ClickAsync();
        await visit.Details.GetByRole(AriaRole.Button, new() { NameRegex = new("^why") }).First.ClickAsync();
        (string sheet, byte[] calculation) = await MakeAsync(visit, "As a sheet (PDF)");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save & print" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Versions" }).ClickAsync();
        await visit.Page.GetByLabel("Name of this version").FillAsync("as bid");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Keep a version" }).ClickAsync();
        (string changes, byte[] revision) = await visit.SavedAsync(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = "What has changed since (PDF)" }).First.ClickAsync());

        Assert.Equal(("level-yard-calculation.pdf", "level-yard-revision.pdf"), (sheet, changes));
        Assert.True(calculation.AsSpan().StartsWith("%PDF-"u8) && revision.AsSpan().StartsWith("%PDF-"u8));
        Assert.Empty(visit.Troubles);
    }
}
