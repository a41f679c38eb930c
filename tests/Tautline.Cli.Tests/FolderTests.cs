using System.Text.Json;
using Tautline.Cli.Folder;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Plan;
using Tautline.Cli.Terminal;
using Tautline.Formats.Csv;

namespace Tautline.Cli.Tests;

/// <summary>A folder of jobs. Figures are those of docs/checks/first-light.md: the line is 100 ft with 11 posts, the yard 300 ft with 31 and 2 gates.</summary>
public sealed class FolderTests
{
    private const string Book = "job \"Back\"\nspec lot height 6' brace no\nline back\nleg 50'\n";

    [Fact]
    public void EveryJobIsALineByNameAndTheSumsStandBelow()
    {
        using var folder = Some();
        var ran = folder.Run("plan", "@jobs");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        var rows = ran.Output.Split('\n').Select(Words).ToList();
        Assert.Equal("Jobs in jobs", rows[0]);
        Assert.StartsWith("a.json 1 300.0 31 2 0 ", rows[2], StringComparison.Ordinal);
        Assert.StartsWith("b.tape 1 50.0 ", rows[3], StringComparison.Ordinal);
        Assert.StartsWith("c.json 1 100.0 11 0 0 1 0 ", rows[4], StringComparison.Ordinal); // the rolls end 4 7/8 in past the terminal
        Assert.Matches("^total 3 450.0 .* 2 0 .* 3 of 3 planned$", rows[5]);
        Assert.Contains("3 other files passed over: no .tape, and no .json that says \"format\": \"tautline-job\".", rows);
    }

    [Fact]
    public void TheHashIsTheFirstTwelveDigitsOfThePlansOwn()
    {
        using var folder = Some();
        var hash = Words(folder.Run("plan", "@jobs/a.json").Output.Split('\n')[^2]).Split(' ')[^1];
        Assert.Equal(64, hash.Length);
        Assert.EndsWith(' ' + hash[..12], Words(folder.Run("plan", "@jobs").Output.Split('\n')[2]), StringComparison.Ordinal);
    }

    [Fact]
    public void ABadFileIsToldAndTheOthersArePlanned()
    {
        using var folder = Some();
        folder.Put("jobs/b2.json", Jobs.With("1.8288", "1.9")).Put("jobs/b3.json", Jobs.Line100[..200]).Put("jobs/b4.tape", "leg 90 furlongs\n");
        var ran = folder.Run("plan", "@jobs");
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.Contains("total 3 450.0", Words(ran.Output.ReplaceLineEndings(" ")), StringComparison.Ordinal);
        Assert.Contains("3 of 6 planned", ran.Output, StringComparison.Ordinal);
        Assert.Contains("No 2\" 9-ga fabric is made 6' 2 13/16\" high.", Words(ran.Error.ReplaceLineEndings(" ")), StringComparison.Ordinal); // 1.9 m
        Assert.Contains($"error: {Path.Combine("jobs", "b3.json")}, line ", ran.Error, StringComparison.Ordinal);
        Assert.Contains("'furlongs' is not a unit.", ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("warning", ran.Error, StringComparison.Ordinal); // of planned jobs problems are counted, not told
    }

    [Fact]
    public void JsonIsTheSummaryInMetres()
    {
        using var folder = Some();
        folder.Put("jobs/d.json", Jobs.With("1.8288", "1.9"));
        var ran = folder.Run("plan", "@jobs", "--json");
        using var json = JsonDocument.Parse(ran.Output);
        var jobs = json.RootElement.GetProperty("jobs").EnumerateArray().ToList();
        Assert.Equal(["a.json", "b.tape", "c.json", "d.json"], jobs.Select(j => j.GetProperty("file").GetString()));
        Assert.Equal(("yard-job", 31, 2), (jobs[0].GetProperty("job").GetString(), jobs[0].GetProperty("posts").GetInt32(), jobs[0].GetProperty("gates").GetInt32()));
        Assert.Equal(91.44, jobs[0].GetProperty("fence").GetDouble(), 9); // 300 ft
        Assert.Equal(1, jobs[2].GetProperty("problems").GetProperty("warning").GetInt32());
        Assert.False(jobs[3].TryGetProperty("planHash", out _));
        Assert.Contains("is made", jobs[3].GetProperty("why").GetString(), StringComparison.Ordinal);
        var totals = json.RootElement.GetProperty("totals");
        Assert.Equal((4, 3, 3), (totals.GetProperty("jobs").GetInt32(), totals.GetProperty("planned").GetInt32(), totals.GetProperty("lines").GetInt32()));
        Assert.Equal(137.16, totals.GetProperty("fence").GetDouble(), 9); // 450 ft
        Assert.Equal(3, json.RootElement.GetProperty("otherFiles").GetInt32());
    }

    [Theory]
    [InlineData(".plan.txt")]
    [InlineData(".plan.json", "--json")]
    [InlineData(".takeoff.csv", "--csv")]
    [InlineData(".quantities.csv", "--csv", "--by", "line")]
    [InlineData(".quantities.json", "--json", "--by", "line")]
    public void OutWritesEachPlanAsIfItWereAskedForAlone(string ending, params string[] format)
    {
        using var folder = Some();
        Assert.Equal(ExitCode.Fine, folder.Run(["plan", "@jobs", .. format, "--out", "@plans"]).Exit);
        Assert.Equal(["a.json" + ending, "b.tape" + ending, "c.json" + ending], Files(folder, "plans"));
        folder.Run(["plan", "@jobs/a.json", .. format, "--out", "@alone"]);
        Assert.Equal(File.ReadAllText(folder.Of("alone")), File.ReadAllText(folder.Of("plans/a.json" + ending)));
    }

    [Fact]
    public void FilesThatExistAreReplacedOnlyByForceAndJobsNever()
    {
        using var folder = Some();
        var before = Contents(folder, "jobs");
        folder.Run("plan", "@jobs", "--out", "@jobs"); // beside the jobs: none is touched, and the plans are no jobs
        Assert.Equal(before, Contents(folder, "jobs").Where(f => !f.Name.EndsWith(".plan.txt", StringComparison.Ordinal)));
        var again = folder.Run("plan", "@jobs", "--out", "@jobs");
        Assert.Equal(
            (ExitCode.Usage, "", $"error: {Path.Combine("jobs", "a.json.plan.txt")}: The file exists already, and 2 more.\nhint: Give --force to replace, or another folder.\n"),
            (again.Exit, again.Output, again.Error));
        Assert.Equal(ExitCode.Fine, folder.Run("plan", "@jobs", "--out", "@jobs", "--force").Exit);

        folder.Put("jobs/a.json.plan.json", Jobs.Slope12); // named as the plan of a.json would be
        var refused = folder.Run("plan", "@jobs", "--json", "--out", "@jobs", "--force");
        Assert.Equal(ExitCode.Usage, refused.Exit);
        Assert.Contains("A job has this name, and a job is never written over.", refused.Error, StringComparison.Ordinal);
        Assert.Equal(Jobs.Slope12, File.ReadAllText(folder.Of("jobs/a.json.plan.json")));
    }

    [Fact]
    public void AnOutThatIsAFileIsRefusedBeforeAnyWork()
    {
        using var folder = Some();
        folder.Put("plans", "mine");
        var ran = folder.Run("plan", "@jobs", "--out", "@plans");
        Assert.Equal((ExitCode.Unreadable, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("error: plans: The folder cannot be made: ", ran.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(folder.Of("plans")));
    }

    [Theory]
    [InlineData(false, "The folder is empty.")]
    [InlineData(true, "There is no job among the 1 file of the folder.")]
    public void AFolderWithoutJobsSaysWhatAJobIs(bool some, string message)
    {
        using var folder = new CliFolder();
        Directory.CreateDirectory(folder.Of("jobs/within"));
        File.WriteAllText(folder.Of("jobs/within/a.json"), Jobs.Line100);
        if (some) folder.Put("jobs/notes.txt", "leg 50'");
        var ran = folder.Run("plan", "@jobs", "--out", "@plans");
        Assert.Equal((ExitCode.Unreadable, ""), (ran.Exit, ran.Output));
        Assert.Equal(
            $"error: jobs: {message}\nhint: A job is a .tape book, or a .json file that says \"format\": \"tautline-job\". Folders within are not looked into.\n", ran.Error);
        Assert.Equal(["jobs"], folder.Names);
    }

    [Theory]
    [InlineData("--csv, --by and --all go with --out here: the screen shows the summary alone.", "--csv", "posts")]
    [InlineData("--csv, --by and --all go with --out here: the screen shows the summary alone.", "--by", "run")]
    [InlineData("--spec and --crs are for an outline, and a folder's outlines are passed over.", "--spec", "6ft")]
    public void AFlagThatWouldDoNothingIsRefused(string message, params string[] flags)
    {
        using var folder = Some();
        var ran = folder.Run(["plan", "@jobs", .. flags]);
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.StartsWith($"error: jobs: {message}\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ABadRuleSetIsToldOnceNotForEachJob()
    {
        using var folder = Some();
        folder.Put("rules.json", "{}");
        var ran = folder.Run("plan", "@jobs", "--rules", "@rules.json");
        Assert.Equal((ExitCode.Unreadable, ""), (ran.Exit, ran.Output));
        Assert.Single(ran.Error.Split('\n'), l => l.StartsWith("error: rules.json: This is no rule set", StringComparison.Ordinal));
    }

    [Fact]
    public void MetricUnitsAreUsedWhereAskedOrWhereEveryJobIsMetric()
    {
        using var folder = Some();
        Assert.Contains(" 137.2 ", Words(folder.Run("plan", "@jobs", "--units", "metric").Output.Split('\n')[5]), StringComparison.Ordinal); // 450 ft
        File.Delete(folder.Of("jobs/a.json"));
        File.Delete(folder.Of("jobs/b.tape"));
        folder.Put("jobs/c.json", Jobs.With("\"name\"", "\"units\": \"metric\", \"name\""));
        Assert.Contains("fence, m", folder.Run("plan", "@jobs").Output, StringComparison.Ordinal);
    }

    /// <summary>The user cancels while the second of three jobs is planned.</summary>
    [Fact]
    public void CancellingLeavesOnlyWholeFiles()
    {
        using var folder = Some();
        using var cancel = new CancellationTokenSource();
        Planned Plan(PlanningOptions job, CliHost host)
        {
            if (job.File.EndsWith("b.tape", StringComparison.Ordinal)) cancel.Cancel();
            return Planning.Run(job, host);
        }
        var (output, error) = (new StringWriter(), new StringWriter());
        var run = new FolderRun(Options(folder, folder.Of("plans")), Host(output, error, cancel.Token), Plan);
        Assert.ThrowsAny<OperationCanceledException>(() => run.Run());
        Assert.Equal(("", "note: Stopped after 1 of 3 jobs; 1 plan written, each whole.\n"), (output.ToString(), error.ToString()));
        Assert.Equal(["a.json.plan.txt"], Files(folder, "plans"));
        Assert.Contains("\nPlan hash ", File.ReadAllText(folder.Of("plans/a.json.plan.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void AFaultInsideTheProgramOnOneJobStopsNoOther()
    {
        using var folder = Some();
        Planned Plan(PlanningOptions job, CliHost host)
            => job.File.EndsWith("b.tape", StringComparison.Ordinal) ? throw new InvalidOperationException("broken") : Planning.Run(job, host);
        var (output, error) = (new StringWriter(), new StringWriter());
        Assert.Equal(ExitCode.Fault, new FolderRun(Options(folder, null), Host(output, error, default), Plan).Run());
        Assert.Contains("2 of 3 planned", output.ToString(), StringComparison.Ordinal);
        Assert.Contains("b.tape: A fault inside the program: System.InvalidOperationException: broken", error.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Three, one after another; the line stands while the second and third are planned and is wiped at the end.</summary>
    [Fact]
    public void ProgressIsShownOnATerminalOnceItTakesLong()
    {
        using var folder = Some();
        Planned Slowly(PlanningOptions job, CliHost host)
        {
            Thread.Sleep(600);
            return Planning.Run(job, host);
        }
        var (output, error) = (new StringWriter(), new StringWriter());
        new FolderRun(Options(folder, null), Host(output, error, default) with { ErrorIsTerminal = true }, Slowly).Run();
        Assert.Contains("\rplanning 2 of 3, b.tape, ", error.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" \r", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain('\r', output.ToString());
    }

    private static CliHost Host(TextWriter output, TextWriter error, CancellationToken cancelled)
        => new(output, error, false, false, false, CliHost.PlainWidth, cancelled);

    private static PlanOptions Options(CliFolder folder, string? output) => new(
        new(folder.Of("jobs"), RulesChoice.None, null, new OutlineChoices(null, null)), PlanFormat.Text, CsvTable.Takeoff, null, false, new Target(output, false));

    /// <summary>Three jobs and three other files: a note, a plan, and JSON that is no job.</summary>
    private static CliFolder Some()
    {
        var folder = new CliFolder();
        Directory.CreateDirectory(folder.Of("jobs/within"));
        return folder.Put("jobs/a.json", Jobs.Yard).Put("jobs/c.json", Jobs.Line100).Put("jobs/b.tape", Book)
            .Put("jobs/notes.txt", "call back").Put("jobs/other.json", """{ "format": "other", "in": { "format": "tautline-job" } }""").Put("jobs/list.json", "[1, 2");
    }

    private static List<string> Files(CliFolder folder, string name)
        => [.. Directory.GetFiles(folder.Of(name)).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    private static List<(string Name, string Text)> Contents(CliFolder folder, string name)
        => [.. Files(folder, name).Select(f => (f, File.ReadAllText(folder.Of($"{name}/{f}"))))];

    private static string Words(string line) => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
