using Tautline.Architecture.Tests.Reading;

namespace Tautline.Architecture.Tests.Rules;

public sealed class LayerTests
{
    [Fact]
    public void ProjectFilesReferenceOnlyLowerLayers() =>
        Rule.Holds("Arrows point down to the Engine", Sources().SelectMany(p => Layers.Violations(p.Name, p.References)));

    [Fact]
    public void CompiledAssembliesReferenceOnlyLowerLayers() => Rule.Holds(
        "Arrows point down to the Engine, also through a reference's references",
        Sources().SelectMany(p => Layers.Violations(p.Name, OursAmong(CompiledAssembly.OfProject(p).References))));

    [Fact]
    public void TheEngineReferencesNothingButTheRuntime() => Rule.Holds(
        "The Engine is pure: System.* of the shared runtime only",
        NotOfTheRuntime(EngineAssembly().References));

    [Fact]
    public void TheEngineTakesNoPackageButTheBannedApiAnalyzer() => Rule.Holds(
        "The Engine takes no packages",
        Sources().Single(p => p.Name == Layers.Engine).Packages.Where(p => p != "Microsoft.CodeAnalysis.BannedApiAnalyzers"));

    [Fact]
    public void VersionsOfPackagesStandInOnePlace() => Rule.Holds(
        "Package versions are written in Directory.Packages.props only",
        ProjectFile.All().SelectMany(p => p.VersionsWritten.Select(v => $"{p.Path}: {v}")));

    [Fact]
    public void EveryProjectIsInTheSolutionAndHasALockFile()
    {
        var solution = Repository.Read("Tautline.slnx");
        var files = Repository.Files();
        Rule.Holds("A project outside the solution is neither built nor tested; one without a lock file drifts", ProjectFile.All().SelectMany(p => (string?[])[
            solution.Contains($"\"{p.Path}\"", StringComparison.Ordinal) ? null : $"{p.Path} is not in Tautline.slnx",
            files.Contains($"{Path.GetDirectoryName(p.Path)}/packages.lock.json") ? null : $"{p.Path} has no packages.lock.json beside it"]).OfType<string>());
    }

    [Theory]
    [InlineData("Tautline.Engine", "Tautline.Formats")]
    [InlineData("Tautline.Documents", "Tautline.Formats")]
    [InlineData("Tautline.Formats", "Tautline.Cli")]
    [InlineData("Tautline.Web", "Tautline.Server")]
    [InlineData("Tautline.Cli", "Tautline.Engine.Tests")]
    [InlineData("Tautline.Helpers", "Tautline.Engine")]
    public void AnArrowThatPointsUpOrAsideIsSeen(string from, string to) => Assert.Single(Layers.Violations(from, [to]));

    [Theory]
    [InlineData("Tautline.Documents", "Tautline.Engine")]
    [InlineData("Tautline.Cli", "Tautline.Formats")]
    [InlineData("Tautline.Server", "Tautline.Web")]
    public void AnArrowThatPointsDownIsFine(string from, string to) => Assert.Empty(Layers.Violations(from, [to]));

    [Fact]
    public void AForeignAssemblyIsSeenEvenIfItsNameBeginsWithSystem() =>
        Assert.Equal(["Newtonsoft.Json", "System.CommandLine"], NotOfTheRuntime(["System.Runtime", "Newtonsoft.Json", "System.CommandLine"]));

    [Fact]
    public void AProjectFileIsReadWithItsReferencesAndItsVersions()
    {
        var project = ProjectFile.Parse("src/A/A.csproj", """
            <Project><PropertyGroup><AssemblyName>a</AssemblyName></PropertyGroup><ItemGroup>
              <ProjectReference Include="..\Tautline.Engine\Tautline.Engine.csproj" />
              <PackageReference Include="One" />
              <PackageReference Include="Two" Version="1.0" />
              <PackageReference Include="Three"><VersionOverride>2</VersionOverride></PackageReference>
            </ItemGroup></Project>
            """);
        Assert.Equal("a", project.Assembly);
        Assert.Equal(["Tautline.Engine"], project.References);
        Assert.Equal(["One", "Two", "Three"], project.Packages);
        Assert.Equal(["Two", "Three"], project.VersionsWritten);
    }

    private static IEnumerable<ProjectFile> Sources() => ProjectFile.All().Where(p => p.IsSource);

    // An assembly may bear another name than its project: the command is called tautline.
    private static IEnumerable<string> OursAmong(IEnumerable<string> references)
    {
        var projects = ProjectFile.All().ToDictionary(p => p.Assembly, p => p.Name, StringComparer.Ordinal);
        return references.Where(projects.ContainsKey).Select(r => projects[r]);
    }

    private static CompiledAssembly EngineAssembly() => CompiledAssembly.OfProject(Sources().Single(p => p.Name == Layers.Engine));

    private static IEnumerable<string> NotOfTheRuntime(IEnumerable<string> references)
    {
        var runtime = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        return references.Where(r => !r.StartsWith("System.", StringComparison.Ordinal) || !File.Exists(Path.Combine(runtime, $"{r}.dll")));
    }
}
