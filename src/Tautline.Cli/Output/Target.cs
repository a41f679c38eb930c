using System.Text;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Output;

/// <summary>Where the data of a command goes: the output stream, or a file that is whole or not there.</summary>
/// <param name="Path">Nothing for the output stream.</param>
/// <param name="Force">Replace a file that exists.</param>
internal sealed record Target(string? Path, bool Force)
{
    /// <summary>Told before any work: a file that exists is not replaced unasked.</summary>
    public ExitCode Check(CliHost host)
    {
        if (Path is null || Force || !File.Exists(Path)) return ExitCode.Fine;
        Messages.Error(host, $"{Path}: The file exists already.", "Give --force to replace it, or another name.");
        return ExitCode.Usage;
    }

    public ExitCode Write(CliHost host, string text) => Write(host, Encoding.UTF8.GetBytes(text));

    public ExitCode Write(CliHost host, byte[] utf8)
    {
        if (Path is not null) return Write(host, file => file.Write(utf8));
        host.Output.Write(Encoding.UTF8.GetString(utf8));
        host.Output.Flush();
        return ExitCode.Fine;
    }

    /// <summary>Into the file, piece by piece; without one there is nowhere to write to.</summary>
    public ExitCode Write(CliHost host, Action<Stream> write)
    {
        try
        {
            WholeFile.Write(Path!, write, Force);
            return ExitCode.Fine;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Messages.Error(host, $"{Path}: The file cannot be written: {e.Message}", "Check the folder and the space on the disk.");
            return ExitCode.Unreadable;
        }
    }
}
