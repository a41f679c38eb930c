using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Input;

/// <summary>Reads whole files, refusing by length before reading.</summary>
internal static class FileText
{
    /// <summary>The bytes without a byte order mark, or why they cannot be had.</summary>
    public static (byte[]? Bytes, Finding? Fault) Read(string path)
        => Open(path, file => file.CanSeek && file.Length > JobFile.LargestBytes ? (null, TooLarge(path, file.Length)) : Whole(path, file));

    /// <summary>What a reader makes of an open file, or why the file cannot be had.</summary>
    public static (T? Read, Finding? Fault) Open<T>(string path, Func<FileStream, (T?, Finding?)> read)
        where T : class
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            return read(file);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return (null, Fault(path, "There is no such file.", "Check the name and the folder."));
        }
        catch (UnauthorizedAccessException) when (Directory.Exists(path))
        {
            return (null, Fault(path, "This is a folder, not a file.", "Name one file in it."));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return (null, Fault(path, $"The file cannot be read: {e.Message}", ""));
        }
    }

    /// <summary>Reads to the end, but never past the limit: a device or pipe tells no length.</summary>
    private static (byte[]? Bytes, Finding? Fault) Whole(string path, FileStream file)
    {
        var bytes = UpTo(file, JobFile.LargestBytes, out var length);
        return bytes is null ? (null, TooLarge(path, length)) : (WithoutMark(bytes), null);
    }

    /// <summary>All of a stream, counted while it is read; nothing once it is longer than it may be.</summary>
    /// <param name="length">How much was read.</param>
    public static byte[]? UpTo(Stream stream, long most, out long length)
    {
        using var all = new MemoryStream();
        var part = new byte[1 << 16];
        for (int read; (read = stream.Read(part)) > 0;)
        {
            all.Write(part, 0, read);
            if (all.Length > most) break;
        }
        length = all.Length;
        return length > most ? null : all.ToArray();
    }

    public static byte[] WithoutMark(byte[] bytes) => bytes.AsSpan().StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;

    private static Finding TooLarge(string path, long length)
    {
        var problems = new ProblemList();
        JobFile.TooLarge(length, problems);
        var problem = problems.Found[0];
        return new(Severity.Error, problem.Code.ToString(), path, ProblemText.Message(problem, default), ProblemText.Hint(problem, default));
    }

    private static Finding Fault(string path, string message, string hint) => new(Severity.Error, "FileUnreadable", path, message, hint);
}
