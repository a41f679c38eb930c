using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <summary>Hours of one person on one operation.</summary>
/// <param name="Operation">Nothing where none was named.</param>
internal sealed record FieldHours(string Person, string? Operation, double Hours)
{
    /// <summary>By person, then in the order of the work; what has no place there comes after.</summary>
    public static IReadOnlyList<FieldHours> Of(LogState log) =>
    [
        .. log.Standing.Where(e => e.Worked is not null).GroupBy(e => (e.Person, e.Worked!.Operation)).Select(g => new FieldHours(g.Key.Person, g.Key.Operation, g.Sum(e => e.Worked!.Hours)))
            .OrderBy(h => h.Person, StringComparer.Ordinal).ThenBy(h => Rank(h.Operation)).ThenBy(h => h.Operation, StringComparer.Ordinal),
    ];

    private static int Rank(string? operation) => Operations.All.Index().Where(o => o.Item == operation).Select(o => o.Index).FirstOrDefault(operation is null ? int.MaxValue : Operations.All.Count);
}
