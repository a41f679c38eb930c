using System.Collections.Immutable;
using System.Text;
using System.Text.Unicode;
using Tautline.Formats.Ground.Reading;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>
/// The lines of a text file. UTF-8 or UTF-16 by its mark, else strict UTF-8, else byte for byte as Latin-1: a bad letter in a label stops nothing.
/// </summary>
internal static class SurveyText
{
    private const char EndOfFile = '\u001A'; // Ctrl-Z, as old programs close a text

    /// <summary>All lines, without their ends, which may be LF, CR LF, CR, and mixed; null where it is no text.</summary>
    public static ImmutableArray<string>? Lines(ByteSource source, ProblemList problems)
    {
        var bytes = new byte[source.Length];
        source.Read(0, bytes);
        if (Decode(bytes, problems) is not { } text) return null;
        var lines = text.TrimEnd(EndOfFile).ReplaceLineEndings("\n").Split('\n');
        return lines is [.., ""] ? [.. lines[..^1]] : [.. lines];
    }

    private static string? Decode(byte[] bytes, ProblemList problems)
    {
        if (bytes is [0xFF, 0xFE, ..]) return Encoding.Unicode.GetString(bytes.AsSpan(2));
        if (bytes is [0xFE, 0xFF, ..]) return Encoding.BigEndianUnicode.GetString(bytes.AsSpan(2));
        ReadOnlySpan<byte> plain = bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes.AsSpan(3) : bytes;
        if (plain.Contains((byte)0))
        {
            problems.Add(PointFindings.NotText);
            return null;
        }
        if (Utf8.IsValid(plain)) return Encoding.UTF8.GetString(plain);
        problems.Add(PointFindings.NotUtf8);
        return Encoding.Latin1.GetString(plain);
    }
}
