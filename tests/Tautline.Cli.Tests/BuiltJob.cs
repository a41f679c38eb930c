namespace Tautline.Cli.Tests;

/// <summary>A job, what was handed over from the field for it, and every command that can plan the one through the other.</summary>
internal static class BuiltJob
{
    public static readonly string[][] Commands =
    [
        ["plan", "@job.json"], ["plan", "@job.json", "--json"], ["plan", "@job.json", "--csv", "posts"], ["stakes", "@job.json"], ["hang", "@job.json"], ["profile", "@job.json"], ["check", "@job.json"],
        ["why", "@job.json", "post/side/4/bags"], ["why", "@job.json", "--list"], ["card", "@job.json", "--post", "A1"], ["compare", "@job.json", "--rule-set", "caltrans"],
        ["papers", "@job.json", "--paper", "site", "--out", "@site.dxf"],
    ];

    /// <summary>The sample's field file and the job that comes out of it.</summary>
    public static CliFolder Folder(byte[]? field = null)
    {
        var folder = new CliFolder();
        Assert.Equal(ExitCode.Fine, folder.Run("field", "job", Samples.Field, "-o", "@job.json").Exit);
        return folder.Put("f.json", field ?? FieldFiles.Sample);
    }
}
