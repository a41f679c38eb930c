using Tautline.Field.Log;

namespace Tautline.Field.Merging;

/// <summary>What one device did to the job since it last shared it.</summary>
/// <param name="Tick">Orders the changes of several devices: see <see cref="Stamp"/>.</param>
public sealed record JobChange(LogKey Key, long Tick, string Person, IReadOnlyList<FieldChange> Fields, IReadOnlyList<Resolution> Resolves)
{
    /// <summary>What a later program wrote besides, by name, as canonical text: carried along.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Extra { get; init; } = [];
}

/// <summary>A person settled a conflict.</summary>
/// <param name="Path">The field or entity it is about.</param>
/// <param name="Stood">The value that stood when it was settled.</param>
/// <param name="Seen">The other values the person saw; one that came later stays open.</param>
/// <param name="Value">What shall stand.</param>
/// <param name="Round">How many settlements of this field its author knew: one that does not know of another does not overrule it.</param>
public sealed record Resolution(string Path, string? Stood, IReadOnlyList<string?> Seen, string? Value, int Round)
{
    /// <summary>What a later program wrote besides, by name, as canonical text: carried along.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Extra { get; init; } = [];
}

/// <summary>Values that several people gave one field without knowing of each other. Open until a person settles it.</summary>
/// <param name="Base">What all of them started from.</param>
/// <param name="Stands">What the job has meanwhile.</param>
/// <param name="Others">What it could have instead, in ordinal order; an entity there or gone is the empty text or nothing.</param>
/// <param name="Round">How many times it was settled before.</param>
public sealed record Conflict(string Path, string? Base, string? Stands, IReadOnlyList<string?> Others, int Round)
{
    /// <summary>A person who saw it says what shall stand.</summary>
    public Resolution Settle(string? value) => new(Path, Stands, Others, value, Round);
}
