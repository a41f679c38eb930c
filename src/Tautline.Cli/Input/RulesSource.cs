using System.Text.Json;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Input;

/// <summary>Which rule set was asked for on the command line: a file, a name, or neither.</summary>
internal sealed record RulesChoice(string? File, string? Name)
{
    public static RulesChoice None { get; } = new(null, null);

    public bool Made => File is not null || Name is not null;
}

/// <summary>The rule set a command works by: one from a file, a built-in one by name, or the one the job names.</summary>
internal static class RulesSource
{
    private const string Hint = "A set of your own extends a built-in one: docs/rule-sets.md shows how; 'tautline catalog rule-keys' lists the keys.";

    /// <param name="jobSet">The set the job names; the base set is taken where it is not known, and the plan then tells.</param>
    public static (Rules? Rules, Finding? Fault) Load(RulesChoice choice, string jobSet)
        => choice.File is { } path ? FromFile(path) : (RuleSets.Find(choice.Name ?? jobSet) ?? RuleSets.Base, null);

    private static (Rules? Rules, Finding? Fault) FromFile(string path)
    {
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
