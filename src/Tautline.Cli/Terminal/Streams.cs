using System.Text;

namespace Tautline.Cli.Terminal;

internal static class Streams
{
    /// <summary>A writer of UTF-8 without a mark and with line feeds, on every system.</summary>
    public static StreamWriter Utf8(Stream stream) => new(stream, new UTF8Encoding(false)) { NewLine = "\n", AutoFlush = true };
}
