using System.Text.RegularExpressions;

namespace Tautline.Architecture.Tests.Reading;

internal static partial class SourceCode
{
    /// <summary>C# without its comments and the content of its strings, lines kept, so that words in them do not count as code.</summary>
    public static string CodeOnly(string source) => NotCode().Replace(source, found => KeepLines(found.Value));

    public static int LineCount(string source) => source.Length == 0 ? 0 : source.TrimEnd('\n').Count(c => c == '\n') + 1;

    private static string KeepLines(string text) => text[0] == '/' ? new string('\n', text.Count(c => c == '\n')) : "\"\"" + new string('\n', text.Count(c => c == '\n'));

    // In this order: line comment, block comment, raw string, verbatim string, string, character.
    [GeneratedRegex("""//[^\n]*|/\*[\s\S]*?\*/|("{3,})[\s\S]*?\1|@\$?"(?:[^"]|"")*"|"(?:\\.|[^"\\\n])*"|'(?:\\.[^'\n]*|[^'\\\n])'""")]
    private static partial Regex NotCode();
}
