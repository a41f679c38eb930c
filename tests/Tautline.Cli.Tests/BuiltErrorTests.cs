using System.Text;
using System.Text.Json;
using Tautline.Field.Merging;

namespace Tautline.Cli.Tests;

/// <summary>--built with what is none of this job's field files: told in words, with the right exit code, and nothing comes out.</summary>
public sealed class BuiltErrorTests
{
    /// <summary>Nothing is shown and nothing is written.</summary>
    private static void Refused(CliFolder folder, ExitCode exit, string error)
    {
        using (folder)
            foreach (var command in BuiltJob.Commands)
            {
                var ran = folder.Run([.. command, "--built", "@f.json"]);
                Assert.Equal((exit, ""), (ran.Exit, ran.Output));
                Assert.StartsWith(error, ran.Error.Replace(folder.Of("f.json"), "f.json", StringComparison.Ordinal), StringComparison.Ordinal);
                Assert.False(File.Exists(folder.Of("site.dxf")));
            }
    }

    [Fact]
    public void AFileOfAnotherJob() => Refused(
        BuiltJob.Folder(FieldFiles.Of(SharedJob.Begin(FieldFiles.Other))), ExitCode.Usage,
        "error: f.json: This is of the job 'elm-lane' and job.json is 'cedar-lane': nothing in it stands on this one.\n"
        + "hint: Name what was handed over for 'cedar-lane', or take the job out of this file: 'tautline field job f.json -o job.json'.\n");

    [Fact]
    public void AFileThatIsNotThere()
    {
        var folder = BuiltJob.Folder();
        File.Delete(folder.Of("f.json"));
        Refused(folder, ExitCode.Unreadable, "error: f.json: There is no such file.\nhint: Check the name and the folder.\n");
    }

    [Fact]
    public void AFolder()
    {
        var folder = BuiltJob.Folder();
        File.Delete(folder.Of("f.json"));
        Directory.CreateDirectory(folder.Of("f.json"));
        Refused(folder, ExitCode.Unreadable, "error: f.json: This is a folder, not a file.\nhint: Name one file in it.\n");
    }

    [Theory]
    [InlineData("", ": The file is empty.\nhint: Ask for the file once more.\n")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":3}", ", version: A newer program wrote this file; this one reads version 2.")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":2}", ", roots: The file holds no job that can be read: nothing of it was taken.\n")]
    [InlineData(Jobs.Line100, ": This is a job, not what was handed over from the field: it has no log.\nhint: ")]
    public void NoFieldFile(string text, string message) => Refused(BuiltJob.Folder(Encoding.UTF8.GetBytes(text)), ExitCode.Unreadable, $"error: f.json{message}");

    [Fact]
    public void AFileThatWasCutOff() => Refused(BuiltJob.Folder(FieldFiles.Sample[..3000]), ExitCode.Unreadable, "error: f.json, line ");

    [Fact]
    public void AZipThatWasCutOff() => Refused(BuiltJob.Folder(FieldFiles.ZipOf(FieldFiles.Sample)[..900]), ExitCode.Unreadable, "error: f.json: The ZIP is damaged or was cut off: ");

    /// <summary>As JSON on the output too, for whoever reads that.</summary>
    [Fact]
    public void CheckTellsARefusalAsJson()
    {
        using var folder = BuiltJob.Folder(FieldFiles.Of(SharedJob.Begin(FieldFiles.Other)));
        var ran = folder.Run("check", "@job.json", "--json", "--built", "@f.json");
        using var told = JsonDocument.Parse(ran.Output);
        Assert.Equal((ExitCode.Usage, "FieldJob"), (ran.Exit, told.RootElement[0].GetProperty("code").GetString()));
    }

    [Fact]
    public void OfAFolderOfJobsNothingStands()
    {
        using var folder = BuiltJob.Folder();
        Directory.CreateDirectory(folder.Of("jobs"));
        File.Copy(folder.Of("job.json"), folder.Of("jobs/job.json"));
        var ran = folder.Run("plan", "@jobs", "--built", "@f.json");
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("error: jobs: --built is of one job, and a folder holds several.\n", ran.Error.Replace(folder.Of("jobs"), "jobs", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    /// <summary>What is wrong with the job is told at its place in the job's file, as without the flag.</summary>
    [Fact]
    public void AJobWithErrorsIsToldOfItsErrors()
    {
        using var folder = BuiltJob.Folder();
        folder.Put("job.json", File.ReadAllText(folder.Of("job.json")).Replace("2.375-sch40", "no-such-pipe", StringComparison.Ordinal));
        var (drawn, stands) = (folder.Run("plan", "@job.json"), folder.Run("plan", "@job.json", "--built", "@f.json"));
        Assert.Equal((ExitCode.Problems, ""), (stands.Exit, stands.Output));
        Assert.StartsWith("error: job.json, specs[0].linePost, line ", stands.Error, StringComparison.Ordinal);
        Assert.Equal(drawn.Error, stands.Error);
    }
}
