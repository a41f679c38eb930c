namespace Tautline.Cli.Output;

/// <summary>Writes a file beside its place and then moves it there, so that nothing half written is ever found under its name.</summary>
internal static class WholeFile
{
    public static void Write(string path, byte[] bytes, bool replace) => Write(path, file => file.Write(bytes), replace);

    public static void Write(string path, Action<Stream> write, bool replace)
    {
        var full = Path.GetFullPath(path);
        var beside = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.part");
        try
        {
            using (var file = new FileStream(beside, FileMode.CreateNew, FileAccess.ReadWrite))
            {
                write(file);
                file.Flush(flushToDisk: true);
            }
            File.Move(beside, full, replace);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
