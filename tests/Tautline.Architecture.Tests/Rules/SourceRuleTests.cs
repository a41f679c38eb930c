using System.Security.Cryptography;
using System.Text;
using Tautline.Architecture.Tests.Reading;

namespace Tautline.Architecture.Tests.Rules;

public sealed class SourceRuleTests
{
    private const string Planner = "src/Tautline.Engine/JobPlanner.cs";

    [Fact]
    public void NoFileNamesAPathOfOneMachine() => Rule.Holds(
        "Paths are relative to the repository, or found at run time",
        Repository.Files().SelectMany(f => SourceRules.MachinePaths(f, Latin1(f))));

    [Fact]
    public void LockFilesNameNoHost() => Rule.Holds(
        "Where packages come from is the machine's business, not the repository's",
        Repository.Files("", "packages.lock.json", "nuget.config", "NuGet.config", ".npmrc").SelectMany(f => SourceRules.WebAddresses(f, Repository.Read(f)))
            .Concat(Repository.Files("", "package-lock.json").SelectMany(f => SourceRules.ResolvedAddresses(f, Repository.Read(f)))));

    [Fact]
    public void NoFileIsACopyFromTheSharedData()
    {
        var shared = Repository.Shared() ?? Skipped();
        // A standard licence text is the same file everywhere, ours included.
        var theirs = Directory.EnumerateFiles(Path.Combine(shared, "data"), "*", SearchOption.AllDirectories)
            .Where(f => new FileInfo(f).Length > 0 && !f.Contains("/licenses/", StringComparison.Ordinal)).ToLookup(f => Hash(File.ReadAllBytes(f)));
        Assert.NotEmpty(theirs);
        Rule.Holds("Shared data is read where it lies, never committed", Copies(Repository.Files().Select(f => (f, File.ReadAllBytes(Repository.PathOf(f)))), theirs));
    }

    [Fact]
    public void ThePlannerIsAPlainListOfStages()
    {
        Assert.True(File.Exists(Repository.PathOf(Planner)), $"{Planner} is not there; it is the one place that shows the order of the stages");
        var text = Repository.Read(Planner);
        Rule.Holds("JobPlanner shows the order of the stages and decides nothing",
            SourceRules.TooLong(Planner, text, SourceRules.LongestPlanner).Concat(SourceRules.Decisions(Planner, text)));
    }

    [Fact]
    public void NoSourceFileIsTooLong() => Rule.Holds(
        "A file this long holds more than one thing",
        // What a tool wrote from the model is as long as the model.
        Repository.Files("", ".cs").Where(f => !f.Contains("/Migrations/", StringComparison.Ordinal)).SelectMany(f => SourceRules.TooLong(f, Repository.Read(f), SourceRules.LongestFile)));

    [Fact]
    public void OnlyTheDoorsLookPastACompany() => Rule.Holds(
        "What is asked before a company is known stands in Doors.cs; everything else is filtered by the company at work",
        Repository.Files("src/", ".cs").Where(f => !f.EndsWith("/Tautline.Store/Doors.cs", StringComparison.Ordinal)).SelectMany(f => SourceRules.PastTheFilter(f, Repository.Read(f))));

    [Fact]
    public void ALookPastACompanyIsSeen() => Assert.Equal("f(2): IgnoreQueryFilters", Assert.Single(SourceRules.PastTheFilter("f", "// IgnoreQueryFilters\nstore.Jobs.IgnoreQueryFilters();")));

    [Fact]
    public void NothingInTheSourcesIsLeftUnfinished() => Rule.Holds(
        "Finish it, or write it down in docs/",
        Repository.Files("src/", ".cs", ".razor", ".ts", ".js", ".mjs", ".css", ".html", ".csproj").SelectMany(f => SourceRules.UnfinishedWork(f, Repository.Read(f))));

    [Theory]
    [InlineData("cd /", "work/", "x")]
    [InlineData("\"/", "root/", ".nuget\"")]
    [InlineData("see /", "home/anna/", "plan.json")]
    [InlineData("C:\\", "Users\\", "anna")]
    public void AMachinePathIsSeenWithItsLine(string before, string path, string after) =>
        Assert.StartsWith("f(2): ", Assert.Single(SourceRules.MachinePaths("f", $"first\n{before}{path}{after}")));

    [Theory]
    [InlineData("docs/work/plan.md")]
    [InlineData("~/work/x")]
    [InlineData("/homework/")]
    [InlineData("app.MapGet(\"/home/\")")]
    public void AnotherPathIsNotTakenForOne(string text) => Assert.Empty(SourceRules.MachinePaths("f", text));

    [Theory]
    [InlineData("if (x) A();")]
    [InlineData("foreach (var p in posts) A(p);")]
    [InlineData("while (true) { }")]
    [InlineData("var y = x switch { _ => 1 };")]
    [InlineData("var y = x > 1 ? 2 : 3;")]
    [InlineData("var y = x > 1\n    ? 2\n    : 3;")]
    public void ADecisionIsSeen(string code) => Assert.Single(SourceRules.Decisions("f", code));

    [Theory]
    [InlineData("// if the ground rises, for example\nvar x = 1;")]
    [InlineData("/* for\nwhile */ string? s = null;")]
    [InlineData("var t = \"if ? for\"; var c = '?';")]
    [InlineData("var t = \"\"\"\n  say \"if\" ? \n  \"\"\";")]
    [InlineData("var t = @\"a \"\"if\"\" \\\"; int? n = t?.Length ?? 0;")]
    [InlineData("var format = Formatted(ifs, fork);")]
    public void WordsInCommentsStringsAndNamesAreNoDecision(string code) => Assert.Empty(SourceRules.Decisions("f", code));

    [Fact]
    public void ACodeLineAfterAStringIsStillRead() =>
        Assert.Equal("f(3): if", Assert.Single(SourceRules.Decisions("f", "var t = \"a\"; // 'x\nvar u = '\"';\nif (t == u) { }")));

    [Theory]
    [InlineData("a\nb\n", 2, 0)]
    [InlineData("a\nb\nc", 2, 1)]
    public void LinesAreCounted(string text, int most, int violations) => Assert.Equal(violations, SourceRules.TooLong("f", text, most).Count());

    [Theory]
    [InlineData("// TO", "DO: later")]
    [InlineData("throw new NotImplemented", "Exception();")]
    public void UnfinishedWorkIsSeen(string start, string end) => Assert.Single(SourceRules.UnfinishedWork("f", start + end));

    [Fact]
    public void AHostInALockFileIsSeen()
    {
        Assert.Single(SourceRules.WebAddresses("f", "{ \"source\": \"HTTPS://example.invalid\" }"));
        Assert.Single(SourceRules.ResolvedAddresses("f", "\"resolved\": \"https://example.invalid/a.tgz\", \"url\": \"https://example.invalid/fund\""));
    }

    [Fact]
    public void ACopyIsSeenUnderAnotherName()
    {
        var theirs = new[] { "shared.txt" }.ToLookup(_ => Hash("same"u8.ToArray()));
        Assert.Equal("b.bin = shared.txt", Assert.Single(Copies([("a.bin", "other"u8.ToArray()), ("b.bin", "same"u8.ToArray())], theirs)));
    }

    private static IEnumerable<string> Copies(IEnumerable<(string Name, byte[] Content)> ours, ILookup<string, string> theirs) =>
        ours.SelectMany(f => theirs[Hash(f.Content)].Take(1).Select(t => $"{f.Name} = {Path.GetFileName(t)}"));

    private static string Hash(byte[] content) => Convert.ToHexString(SHA256.HashData(content));

    // Also right for binary files: a path is ASCII in any of them.
    private static string Latin1(string file) => File.ReadAllText(Repository.PathOf(file), Encoding.Latin1);

    private static string Skipped()
    {
        Assert.Skip("no ../shared beside the repository (TAUTLINE_SHARED may name another place)");
        return "";
    }
}
