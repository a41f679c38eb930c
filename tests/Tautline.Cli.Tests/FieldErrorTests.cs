using System.IO.Compression;
using System.Text;

namespace Tautline.Cli.Tests;

/// <summary>Files that are none of the field's: told in words, with the right exit code, and nothing is written. And what the as-built does.</summary>
public sealed class FieldErrorTests
{
    private static readonly string[][] commands =
    [
        ["field", "show", "@f"], ["field", "job", "@f", "-o", "@out.json"], ["field", "as-built", "@f", "-o", "@out.pdf"], ["field", "photos", "@f", "-o", "@out"], ["field", "merge", "@f", "@f", "-o", "@out.json"],
    ];

    private static void Refused(byte[] file, string message)
    {
        using var folder = new CliFolder().Put("f", file);
        foreach (var command in commands)
        {
            var ran = folder.Run(command);
            Assert.Equal((ExitCode.Unreadable, ""), (ran.Exit, ran.Output));
            Assert.StartsWith($"error: f{message}", ran.Error, StringComparison.Ordinal);
            Assert.Equal(["f"], folder.Names);
        }
    }

    [Theory]
    [InlineData("", ": The file is empty.\nhint: Ask for the file once more.\n")]
    [InlineData(" \r\n", ": The file is empty.\n")]
    [InlineData("{\"format\":\"other\"}", ", format: This is no file of one device for another: its format is not 'tautline-exchange'.\nhint: A field file is made on the phone")]
    [InlineData("[1]", ": This is no file of one device for another: it has no object at its head.\nhint: A field file is made on the phone")]
    [InlineData("job \"Alder Row\"\nline yard\n", ", line 1: This is no JSON, or it was cut off: ask for the file once more.\nhint: A field file")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":3}", ", version: A newer program wrote this file; this one reads version 2. Update the program here, then open the file again: nothing of it was taken.\n")]
    [InlineData("{\"format\":\"tautline-exchange\",\"version\":2}", ", roots: The file holds no job that can be read: nothing of it was taken.\n")]
    [InlineData(Jobs.Line100, ": This is a job, not what was handed over from the field: it has no log.\nhint: 'tautline plan ")]
    public void NoFieldFile(string text, string message)
    {
        Refused(Encoding.UTF8.GetBytes(text), message);
        Refused(FieldFiles.Zip(Encoding.UTF8.GetBytes(text)), $", field.json{message}");
    }

    /// <summary>The other way round: every command for jobs says where the job is.</summary>
    [Theory]
    [InlineData("plan")]
    [InlineData("check")]
    [InlineData("papers", "--out", "@x.pdf")]
    public void AFieldFileInPlaceOfAJob(string command, params string[] more)
    {
        using var folder = new CliFolder().Put("f.json", FieldFiles.Sample);
        var ran = folder.Run([command, "@f.json", .. more]);
        Assert.Equal((ExitCode.Unreadable, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("error: f.json: This was handed over from the field and is no job; the job is in it.\nhint: 'tautline field job ", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["f.json"], folder.Names);
    }

    [Fact]
    public void AFileThatWasCutOff() => Refused(FieldFiles.Sample[..3000], ", line ");

    [Fact]
    public void AMissingFile()
    {
        using var folder = new CliFolder();
        foreach (var command in commands) Assert.Equal((ExitCode.Unreadable, "error: f: There is no such file.\nhint: Check the name and the folder.\n"), folder.Run(command) is var ran ? (ran.Exit, ran.Error.Split("error")[1] is var first ? $"error{first}" : "") : default);
        Assert.Empty(folder.Names);
    }

    /// <summary>A job that was cut off is still a job.</summary>
    [Fact]
    public void AJobThatWasCutOff() => Refused(Encoding.UTF8.GetBytes(Jobs.Line100[..200]), ": This is a job, not what was handed over from the field: it has no log.\n");

    [Fact]
    public void AZipThatWasCutOff() => Refused(FieldFiles.ZipOf(FieldFiles.Sample, FieldFiles.Picture("one"))[..900], ": The ZIP is damaged or was cut off: ");

    [Fact]
    public void AZipWithoutAFieldFile() => Refused(FieldFiles.Zip(null, ("other.json", FieldFiles.Sample)), ": The ZIP holds no field.json.\nhint: A field file is made on the phone");

    [Fact]
    public void AZipWithTwoFieldFiles() => Refused(FieldFiles.Zip(FieldFiles.Sample, ("field.json", FieldFiles.Sample)), ": The ZIP holds field.json 2 times.\n");

    /// <summary>A gigabyte of blanks is about a megabyte packed: it is counted while it is unpacked, whatever the ZIP says of its size.</summary>
    [Fact]
    public void AZipThatUnpacksWithoutEndIsStoppedAt64Megabytes()
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var packed = zip.CreateEntry("field.json", CompressionLevel.Fastest).Open();
            var blank = Enumerable.Repeat((byte)' ', 1 << 20).ToArray();
            for (var i = 0; i < 1024; i++) packed.Write(blank);
        }
        using var folder = new CliFolder().Put("f", bytes.ToArray());
        var before = GC.GetTotalAllocatedBytes(true);
        var ran = folder.Run("field", "show", "@f");
        Assert.InRange(GC.GetTotalAllocatedBytes(true) - before, 0, 400L << 20);
        Assert.Equal((ExitCode.Unreadable, "error: f, field.json: The file is larger than 64 MB, and no field file is.\n"), (ran.Exit, ran.Error.Split("hint")[0]));
    }

    [Fact]
    public void AFileOf100MegabytesIsRefused()
    {
        using var folder = new CliFolder();
        using (var file = File.Create(folder.Of("f"))) file.SetLength(100L << 20);
        Assert.StartsWith("error: f: The file is larger than 64 MB, and no field file is.\n", folder.Run("field", "show", "@f").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatIsThereIsReplacedOnlyByForce()
    {
        using var folder = new CliFolder().Put("out.json", "mine").Put("out.pdf", "mine");
        foreach (var command in new string[][] { ["field", "job", Samples.Field, "-o", "@out.json"], ["field", "as-built", Samples.Field, "-o", "@out.pdf"], ["field", "merge", Samples.Field, Samples.Field, "--out", "@out.json"] })
        {
            Assert.Equal(ExitCode.Usage, folder.Run(command).Exit);
            Assert.Equal("mine", File.ReadAllText(folder.Of(command[^1][1..])));
            Assert.Equal(ExitCode.Fine, folder.Run([.. command, "--force"]).Exit);
            Assert.NotEqual("mine", File.ReadAllText(folder.Of(command[^1][1..])));
            folder.Put("out.json", "mine");
        }
        Assert.Equal(["out.json", "out.pdf"], folder.Names);
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public void TheAsBuiltIsAPdfInTheLanguageAskedFor(string language)
    {
        using var folder = new CliFolder();
        var ran = folder.Run("field", "as-built", Samples.Field, "-o", "@x.pdf", "--lang", language, "--zone", "-06:00");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Output));
        Assert.Matches(@"^2 pages, [\d,]+ bytes\n$", ran.Error);
        var pdf = Encoding.Latin1.GetString(File.ReadAllBytes(folder.Of("x.pdf")));
        Assert.StartsWith("%PDF-", pdf, StringComparison.Ordinal);
        Assert.Contains($"/Lang({language}-US)", pdf, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--out x.txt: the as-built is a PDF.", "x.txt")]
    [InlineData("--lang cannot be 'fr': write en or es.", "x.pdf", "--lang", "fr")]
    public void AnAsBuiltThatCannotBe(string message, string file, params string[] flags)
    {
        using var folder = new CliFolder();
        var ran = folder.Run(["field", "as-built", Samples.Field, "-o", "@" + file, .. flags]);
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.Contains(message, ran.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Names);
    }

    [Fact]
    public void AJobWithErrorsHasNoAsBuilt()
    {
        using var folder = new CliFolder().Put("f", FieldFiles.Of(FieldFiles.Opening("a", 90)));
        Assert.Equal(ExitCode.Problems, folder.Run("field", "as-built", "@f", "-o", "@x.pdf").Exit);
        Assert.Equal(["f"], folder.Names);
    }

    [Fact]
    public void WithoutACommandTheCommandsAreNamed()
    {
        using var folder = new CliFolder();
        Assert.EndsWith("hint: 'tautline field --help' shows what belongs here. Commands: show, merge, job, as-built, photos.\n", folder.Run("field").Error, StringComparison.Ordinal);
    }
}
