using System.Globalization;
using System.Text;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Cli.Input;

/// <summary>Reads a tape book; its problems are placed by line and column.</summary>
internal static class TapeSource
{
    public static LoadedJob Read(string path, byte[] bytes, Rules rules)
    {
        if (Text(bytes) is not { } text) return LoadedJob.Of(path, default, null, [NotText(path)]);
        var reading = TapeBookReader.Read(text, rules);
        return LoadedJob.Of(path, default, reading.Job, [.. reading.Problems.Select(p => Describe(path, p))]);
    }

    private static string? Text(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    private static Finding Describe(string path, TapeProblem problem) => new(
        problem.Severity, problem.Code, string.Create(CultureInfo.InvariantCulture, $"{path}, line {problem.Line}, column {problem.Column}"),
        problem.Message, problem.Hint);

    private static Finding NotText(string path)
        => new(Severity.Error, "NotUtf8", path, "The file is no UTF-8 text.", "Save the tape book as plain text in UTF-8.");
}
