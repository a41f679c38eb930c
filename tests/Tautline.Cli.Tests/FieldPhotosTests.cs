using Tautline.Engine.Quantities;
using Tautline.Field.Log;

namespace Tautline.Cli.Tests;

/// <summary>Photos taken out of a ZIP.</summary>
public sealed class FieldPhotosTests
{
    private static readonly byte[] one = FieldFiles.Picture("one");
    private static readonly byte[] two = FieldFiles.Picture("two");

    private static LogEntry Photo(long number, string words, string place, params byte[][] pictures) => FieldFiles.Entry("a", number, words, LogEntry.Photo) with
    {
        Photos = [.. pictures.Select(FieldFiles.Photo)],
        Place = place.Length > 0 ? new() { Leg = new("side/leg1"), At = Length.FromFeet(3), Called = place } : null,
    };

    private static string[] Names(CliFolder folder) => [.. Directory.GetFiles(folder.Of("out")).Select(p => Path.GetFileName(p)).Order(StringComparer.Ordinal)];

    private static Ran Take(CliFolder folder, byte[] zip) => folder.Put("f.zip", zip).Run("field", "photos", "@f.zip", "-o", "@out", "--zone", "-06:00");

    [Fact]
    public void APhotoIsNamedByItsDatePlaceAndWords()
    {
        using var folder = new CliFolder();
        var ran = Take(folder, FieldFiles.ZipOf(FieldFiles.Of(Photo(1, "Rock at the fourth post", "side", one)), one, two));
        Assert.Equal((ExitCode.Fine, "2 photos written to out\n", ""), (ran.Exit, ran.Output, ran.Error));
        Assert.Equal([$"2026-10-13-0801-side-Rock-at-the-fourth-post-{FieldFiles.Digest(one)[..8]}.jpg", $"no-entry-{FieldFiles.Digest(two)[..8]}.jpg"], Names(folder));
        Assert.Equal(one, File.ReadAllBytes(Path.Combine(folder.Of("out"), Names(folder)[0])));
    }

    /// <summary>Words come from other people's phones.</summary>
    [Theory]
    [InlineData("../../etc/passwd", "", "etc-passwd")]
    [InlineData("C:\\con.txt:stream|<>\"?*", "NUL", "NUL-C-con-txt-stream")]
    [InlineData("Año nuevo: cañón", "línea norte", "linea-norte-Ano-nuevo-canon")]
    [InlineData(" . \u202egnp.exe\u0000\n", "", "gnp-exe")]
    [InlineData("門の写真", "", "")]
    [InlineData("a very long caption that goes on and on and on and on and on and on and on", "", "a-very-long-caption-that-goes-on-and-on-and-on-a")]
    public void WordsBecomeAFileNameThatIsSafeAnywhere(string words, string place, string safe)
    {
        using var folder = new CliFolder();
        Assert.Equal(ExitCode.Fine, Take(folder, FieldFiles.ZipOf(FieldFiles.Of(Photo(1, words, place, one)), one)).Exit);
        Assert.Equal([$"2026-10-13-0801-{safe}{(safe.Length > 0 ? "-" : "")}{FieldFiles.Digest(one)[..8]}.jpg"], Names(folder));
        Assert.Equal(["f.zip", "out"], folder.Names);
    }

    /// <summary>No name of the ZIP ever becomes a name on the disk: only what is called as the phone calls it is looked at, and by its digest.</summary>
    [Fact]
    public void NamesInTheZipLeadNowhere()
    {
        using var folder = new CliFolder();
        var digest = FieldFiles.Digest(one);
        var ran = Take(folder, FieldFiles.Zip(
            FieldFiles.Of(), ("../evil.jpg", one), ("/evil.jpg", one), ($"photos/../{digest}.jpg", one), ($"photos/{digest}.jpg/../../x", one), ($"photos/{digest.ToUpperInvariant()}.jpg", one), ($"photos/{digest}.jpg\n", one), ($"photos/{digest}.jpg", one)));
        Assert.Equal((ExitCode.Fine, "1 photo written to out\n"), (ran.Exit, ran.Output));
        Assert.Equal([$"no-entry-{digest[..8]}.jpg"], Names(folder));
        Assert.Equal(["f.zip", "out"], folder.Names);
    }

    [Fact]
    public void APhotoThatIsNotWhatItsNameSaysIsLeftOut()
    {
        using var folder = new CliFolder();
        var ran = Take(folder, FieldFiles.Zip(FieldFiles.Of(), ($"photos/{FieldFiles.Digest(one)}.jpg", two), ($"photos/{FieldFiles.Digest(two)}.jpg", two)));
        Assert.Equal((ExitCode.Problems, "1 photo written to out\n"), (ran.Exit, ran.Output));
        Assert.Equal($"error: f.zip, photos/{FieldFiles.Digest(one)}.jpg: The photo is damaged or larger than 8 MB: it was left out.\nhint: Ask for the file once more.\n", ran.Error);
        Assert.Equal([$"no-entry-{FieldFiles.Digest(two)[..8]}.jpg"], Names(folder));
    }

    [Fact]
    public void APhotoLargerThanAnyPhoneMakesIsNotUnpacked()
    {
        using var folder = new CliFolder();
        var large = new byte[(8 << 20) + 1];
        Assert.Equal(ExitCode.Problems, Take(folder, FieldFiles.ZipOf(FieldFiles.Of(), large)).Exit);
        Assert.Empty(Names(folder));
        using var just = new CliFolder();
        Assert.Equal(ExitCode.Fine, Take(just, FieldFiles.ZipOf(FieldFiles.Of(), large[1..])).Exit);
    }

    [Fact]
    public void NothingThatIsThereIsReplaced()
    {
        using var folder = new CliFolder();
        var (zip, name) = (FieldFiles.ZipOf(FieldFiles.Of(), one, two), $"no-entry-{FieldFiles.Digest(one)[..8]}.jpg");
        Directory.CreateDirectory(folder.Of("out"));
        File.WriteAllText(Path.Combine(folder.Of("out"), name), "mine");
        var ran = Take(folder, zip);
        Assert.Equal((ExitCode.Usage, "1 photo written to out\n"), (ran.Exit, ran.Output));
        Assert.EndsWith(": Another file of this name is there already: it was left as it is.\nhint: Choose another folder.\n", ran.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder.Of("out"), name)));
        File.Delete(Path.Combine(folder.Of("out"), name));
        Assert.Equal((ExitCode.Fine, "1 photo written to out, 1 there already\n"), Take(folder, zip) is var again ? (again.Exit, again.Output) : default);
    }

    [Fact]
    public void AFileWithoutPhotosMakesNoFolder()
    {
        using var folder = new CliFolder();
        var ran = Take(folder, FieldFiles.Of(Photo(1, "rock", "", one)));
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.Equal("error: f.zip: There are no photos in this file, though its log names 1.\nhint: The phone makes a ZIP with them where it has any: take that file.\n", ran.Error);
        Assert.Equal(["f.zip"], folder.Names);
    }

    [Fact]
    public void PhotosThatAreAwayAreTold()
    {
        using var folder = new CliFolder();
        var ran = Take(folder, FieldFiles.ZipOf(FieldFiles.Of(Photo(1, "rock", "", one, two)), one));
        Assert.Equal((ExitCode.Fine, "note: 1 photo named in the log is not in this file.\nhint: Ask the other phones for theirs.\n"), (ran.Exit, ran.Error));
    }

    [Fact]
    public void AFileInPlaceOfTheFolderIsTold()
    {
        using var folder = new CliFolder().Put("out", "mine");
        var ran = Take(folder, FieldFiles.ZipOf(FieldFiles.Of(), one));
        Assert.Equal(ExitCode.Unreadable, ran.Exit);
        Assert.StartsWith("error: out: The folder cannot be made: ", ran.Error, StringComparison.Ordinal);
    }
}
