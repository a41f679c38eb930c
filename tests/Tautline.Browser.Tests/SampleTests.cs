using System.Security.Cryptography;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;
using Tautline.Engine.Plans;

namespace Tautline.Browser.Tests;

[Trait("Category", "Slow")]
public sealed class SampleTests(BrowserSite site)
{
    /// <summary>Every job file of samples/, with the title its list entry has.</summary>
    public static TheoryData<string, string> Samples
    {
        get
        {
            var samples = new TheoryData<string, string>();
            foreach (string name in Directory.GetFiles(Path.Combine(Checkout.Root, "samples"), "*.json").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal))
                samples.Add(name, Path.GetFileNameWithoutExtension(name).Replace('-', ' '));
            return samples;
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public async Task ASamplePlansToTheSameHashAndPrintsTheSameBytesAsOnTheServer(string file, string title)
    {
        Plan plan = OnTheServer.Plan(file);
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync(title);
        string hash = await visit.HashAsync();
        (string name, byte[] pdf) = await visit.MakePdfAsync();
        await visit.ShootAsync($"sample-{Path.GetFileNameWithoutExtension(file)}"); // for people to look at
        await File.WriteAllBytesAsync(Path.Combine(Checkout.Artifacts, name), pdf);

        Assert.Equal(PlanFile.Hash(plan), hash);
        Assert.Equal(Path.GetFileNameWithoutExtension(file) + "-takeoff.pdf", name);
        Assert.True(pdf.AsSpan().StartsWith("%PDF-"u8));
        Assert.InRange(Pages(pdf), 1, 4);
        Assert.Equal(OnTheServer.Pdf(plan), pdf);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(pdf)), await visit.Page.Locator("#pdf-hash").InnerTextAsync());
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task TheTakeOffHasEveryLineOfThePlan()
    {
        Plan plan = OnTheServer.Plan("level-yard.json");
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Take-off");
        ILocator table = visit.Page.GetByRole(AriaRole.Table, new() { Name = "Take-off of Juniper Flat equipment yard" });
        IReadOnlyList<string> parts = await table.GetByRole(AriaRole.Rowheader).AllInnerTextsAsync();

        Assert.Equal(plan.Takeoff.Select(t => t.Name), parts);
        Assert.True(parts.Count > 10);
    }

    [Fact]
    public async Task TheTakeOffIsSavedForSpreadsheets()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Take-off");
        (string name, byte[] csv) = await visit.SavedAsync(
            () => visit.Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = "Take-off as CSV" }).ClickAsync());

        Assert.Equal("level-yard-takeoff.csv", name);
        Assert.StartsWith("\uFEFFnumber,part,name,section,size_in,", System.Text.Encoding.UTF8.GetString(csv), StringComparison.Ordinal);
    }

    // The page tree of a file of one page is written plainly: '/Count 1'.
    private static int Pages(byte[] pdf) =>
        int.Parse(System.Text.RegularExpressions.Regex.Match(System.Text.Encoding.Latin1.GetString(pdf), @"/Count (\d+)").Groups[1].Value, null);
}
