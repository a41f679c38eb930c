namespace Tautline.Architecture.Tests.Rules;

internal static class Rule
{
    /// <summary>Fails with the rule's reason and every place that breaks it.</summary>
    public static void Holds(string reason, IEnumerable<string> violations)
    {
        var found = violations.ToList();
        Assert.True(found.Count == 0, $"{reason}. Found {found.Count}:\n  {string.Join("\n  ", found)}");
    }
}
