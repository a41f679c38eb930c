using Tautline.Cli.Input;
using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Folder;

/// <summary>What lies in a folder, not in the folders within it.</summary>
/// <param name="Jobs">Paths of the jobs: tape books, and .json files that say they are jobs. By name.</param>
/// <param name="Others">How many other files there are.</param>
internal sealed record FolderFiles(IReadOnlyList<string> Jobs, int Others)
{
    private const int HeadBytes = 1 << 16;

    public static (FolderFiles? Files, Finding? Fault) List(string folder)
    {
        try
        {
            var all = Directory.GetFiles(folder);
            var jobs = all.Where(IsJob).OrderBy(f => Path.GetFileName(f), StringComparer.Ordinal).ToList();
            return (new(jobs, all.Length - jobs.Count), null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, new(Severity.Error, "FolderUnreadable", folder, $"The folder cannot be read: {e.Message}", ""));
        }
    }

    private static bool IsJob(string path) => Path.GetExtension(path).ToLowerInvariant() switch
    {
        ".tape" => true,
        ".json" => SaysJob(path),
        _ => false,
    };

    /// <summary>A file that cannot be read is taken for a job: its fault is then told, not passed over.</summary>
    private static bool SaysJob(string path)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            var bytes = new byte[file.Length <= JobFile.LargestBytes ? file.Length : HeadBytes];
            return JsonHead.Says(bytes.AsSpan(0, file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)), Job.FormatName);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return true;
        }
    }
}
