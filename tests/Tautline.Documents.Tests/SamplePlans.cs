using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

namespace Tautline.Documents.Tests;

/// <summary>The samples of the repository, planned.</summary>
internal static class SamplePlans
{
    private static string Folder
    {
        get
        {
            DirectoryInfo root = new(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(root.FullName, "Tautline.slnx"))) root = root.Parent!;
            return Path.Combine(root.FullName, "samples");
        }
    }

    public static IReadOnlyList<string> Names { get; } = [.. Directory.GetFiles(Folder, "*.json").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    public static Job Job(string sample) => JobFile.Read(File.ReadAllBytes(Path.Combine(Folder, sample))).Job!;

    public static Plan Of(string sample) => Of(Job(sample));

    public static Plan Of(Job job) => JobPlanner.Plan(job, FenceCatalog.BuiltIn(), RuleSets.For(job), BuiltFacts.None);
}
