using Tautline.Engine.Problems;

namespace Tautline.Desk;

/// <summary>Something a person should know, in words, with its place in the file and, where it has one, on the drawing.</summary>
public sealed record Finding(Severity Severity, string Where, string Message, string Hint)
{
    /// <summary>What to select in order to see it; nothing where it is of the whole job.</summary>
    public Selection At { get; init; } = Selection.None;

    public static Finding Error(string where, string message, string hint) => new(Severity.Error, where, message, hint);
}
