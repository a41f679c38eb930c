using Tautline.Cli.Terminal;
using Tautline.Engine.Problems;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

/// <summary>What two people gave different values and nobody settled.</summary>
internal static class FieldConflicts
{
    public static IReadOnlyList<Finding> Told(SharedJob shared, FieldWords words) =>
    [
        .. shared.Conflicts.Select((c, i) => new Finding(
            Severity.Warning, "FieldConflict", "", $"Open conflict, {words.What(c)}: {words.Value(c, c.Stands)} stands meanwhile; could be {string.Join(" or ", c.Others.Select(o => words.Value(c, o)))}.",
            i == shared.Conflicts.Count - 1 ? "Settle it on a phone or in the browser: Field, Hand over." : "")),
    ];
}
