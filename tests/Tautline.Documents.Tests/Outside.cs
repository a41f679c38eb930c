using System.Diagnostics;

namespace Tautline.Documents.Tests;

/// <summary>Programs of others that read a PDF. A test that needs one that is not installed is skipped.</summary>
internal static class Outside
{
    /// <summary>Runs a program on a file; what it says on both streams comes back.</summary>
    public static (int Exit, string Said) Run(string program, string option, byte[] file, params string[] more)
    {
        if (!Installed(program)) Assert.Skip($"no '{program}' on the PATH");
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".pdf");
        File.WriteAllBytes(path, file);
        try
        {
            return Run(new ProcessStartInfo(program, [option, path, .. more]) { RedirectStandardOutput = true, RedirectStandardError = true });
        }
        finally
        {
            File.Delete(path);
        }
    }

    /// <summary>Runs a program in a folder of its own where the file lies under a name.</summary>
    /// <param name="made">A file the program makes beside it; its text comes back.</param>
    public static string Made(string program, string[] arguments, string name, byte[] file, string? made = null)
    {
        if (!Installed(program)) Assert.Skip($"no '{program}' on the PATH");
        DirectoryInfo folder = Directory.CreateTempSubdirectory();
        try
        {
            File.WriteAllBytes(Path.Combine(folder.FullName, name), file);
            var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder.FullName };
            start.Environment["HOME"] = folder.FullName;
            (int exit, string said) = Run(start);
            Assert.True(exit == 0, said);
            return made is null ? said : File.ReadAllText(Path.Combine(folder.FullName, made));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (int Exit, string Said) Run(ProcessStartInfo start)
    {
        using Process process = Process.Start(start)!;
        Task<string> complained = process.StandardError.ReadToEndAsync();
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said + complained.Result);
    }

    private static bool Installed(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));
}
