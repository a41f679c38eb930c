using System.Text.Json;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Input;

/// <summary>The rule set a command works by: the built-in one, or one from a file.</summary>
internal static class RulesSource
{
    private const string Hint = "Start from a copy of the base set: 'tautline catalog rules --json' lists its keys.";

    public static (Rules? Rules, Finding? Fault) Load(string? path)
    {
        if (path is null) return (Rules.BuiltIn(), null);
        var (bytes, fault) = FileText.Read(path);
        return bytes is null ? (null, fault) : Read(path, bytes);
    }

    private static (Rules? Rules, Finding? Fault) Read(string path, byte[] bytes)
    {
        try
        {
            return (Rules.Read(bytes), null);
        }
        catch (Exception e) when (e is JsonException or InvalidDataException or ArgumentException or InvalidOperationException or NullReferenceException)
        {
            return (null, new(Severity.Error, "RulesUnreadable", path, $"This is no rule set: {Plainly(e)}", Hint));
        }
    }

    private static string Plainly(Exception fault) => fault is NullReferenceException ? "a part is missing." : fault.Message;
}
