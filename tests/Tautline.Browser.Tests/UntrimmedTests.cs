using System.Diagnostics;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>The first command of the README, word for word: it serves a build that is neither trimmed nor published, and so differs from what all other tests visit.</summary>
[Trait("Category", "Slow")]
public sealed class UntrimmedTests(BrowserSite site)
{
    [Fact]
    public async Task TheMainCommandServesAPageThatPlansAndPrints()
    {
        Assert.Contains("\n    dotnet run --project src/Tautline.Server\n", await File.ReadAllTextAsync(Checkout.PathOf("README.md")), StringComparison.Ordinal);
        using Process run = Process.Start(new ProcessStartInfo("dotnet", ["run", "--project", "src/Tautline.Server", "--", "--urls", "http://127.0.0.1:0"])
        {
            WorkingDirectory = Checkout.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["TAUTLINE_STORE"] = Path.Combine(Directory.CreateTempSubdirectory("tautline-first-").FullName, "tautline.db"), ["MSBUILDDISABLENODEREUSE"] = "1", ["UseSharedCompilation"] = "false" },
        })!;
        try
        {
            Task<string> complained = run.StandardError.ReadToEndAsync();
            string? said;
            do said = await run.StandardOutput.ReadLineAsync();
            while (said is not null && !said.Contains("http://", StringComparison.Ordinal));
            if (said is null) throw new InvalidOperationException("The command ended: " + await complained);
            _ = run.StandardOutput.ReadToEndAsync();
            await using Visit visit = await site.VisitAsync(address: said[said.IndexOf("http://", StringComparison.Ordinal)..].Split(". ", 2)[0].TrimEnd('.', '/'));
            await visit.OpenAsync();
            await visit.OpenSampleAsync("level yard");
            await Assertions.Expect(visit.Totals).ToContainTextAsync("Posts32");
            Assert.True((await visit.MakePdfAsync()).Bytes.AsSpan().StartsWith("%PDF-"u8));
            Assert.Empty(visit.Troubles);
        }
        finally
        {
            run.Kill(entireProcessTree: true);
            await run.WaitForExitAsync();
        }
    }
}
