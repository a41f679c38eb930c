using System.Text.RegularExpressions;
using Tautline.Architecture.Tests.Reading;

namespace Tautline.Architecture.Tests.Rules;

/// <summary>Rules on the text of files: each takes a name and a text and says what is wrong with it.</summary>
internal static partial class SourceRules
{
    public const int LongestFile = 600;
    public const int LongestPlanner = 80;

    // Put together here, so that this file does not break the rule it states.
    private static readonly Regex OneMachine = new(
        @"(?<![\w.~/\\-])/(?:" + "work|root" + @")/|(?<![\w.~/\\-])/(?:home|Users)/[a-z][\w-]*/|[A-Za-z]:\\" + @"Users\\", RegexOptions.CultureInvariant);

    private static readonly Regex Unfinished = new(@"\b(?:" + "TO" + "DO|FIX" + "ME|HA" + "CK|NotImplemented" + @"Exception)\b", RegexOptions.CultureInvariant);

    public static IEnumerable<string> MachinePaths(string file, string text) => Places(file, text, OneMachine);

    public static IEnumerable<string> UnfinishedWork(string file, string text) => Places(file, text, Unfinished);

    public static IEnumerable<string> TooLong(string file, string text, int most)
    {
        var lines = SourceCode.LineCount(text);
        return lines > most ? [$"{file}: {lines} lines, at most {most}"] : [];
    }

    public static IEnumerable<string> Decisions(string file, string text) => Places(file, SourceCode.CodeOnly(text), Branch());

    public static IEnumerable<string> PastTheFilter(string file, string text) => Places(file, SourceCode.CodeOnly(text), Unfiltered());

    public static IEnumerable<string> WebAddresses(string file, string text) => Places(file, text, Address());

    public static IEnumerable<string> ResolvedAddresses(string file, string text) => Places(file, text, Resolved());

    private static IEnumerable<string> Places(string file, string text, Regex pattern) => pattern.Matches(text)
        .Select(m => $"{file}({text.AsSpan(0, m.Index).Count('\n') + 1}): {m.Value.Trim()}");

    // A conditional's question mark stands free; a nullable type's, ?. and ?? do not.
    [GeneratedRegex(@"\b(?:if|for|foreach|while|do|switch|goto)\b|(?<=\s)\?(?=\s)")]
    private static partial Regex Branch();

    // Raw SQL is not filtered either.
    [GeneratedRegex("IgnoreQueryFilters|FromSql|SqlQuery|ExecuteSql")]
    private static partial Regex Unfiltered();

    [GeneratedRegex("http", RegexOptions.IgnoreCase)]
    private static partial Regex Address();

    [GeneratedRegex(""" "resolved"\s*:\s*"http[^"]* """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Resolved();
}
