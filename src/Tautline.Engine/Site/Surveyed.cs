using System.Diagnostics.CodeAnalysis;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Site;

/// <summary>What came of field notes: the value, or every problem that prevented it.</summary>
/// <param name="Value">Null exactly where an error stands among the problems.</param>
/// <param name="Problems">In the order of the notes; warnings may stand beside a value.</param>
public sealed record Surveyed<T>(T? Value, IReadOnlyList<Problem> Problems)
    where T : class
{
    [MemberNotNullWhen(true, nameof(Value))]
    public bool Ok => Value is not null;
}
