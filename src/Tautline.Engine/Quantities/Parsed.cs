using System.Diagnostics.CodeAnalysis;

namespace Tautline.Engine.Quantities;

/// <summary>
/// What reading a text gave: a value, or the problem that prevented it. <see cref="Value"/> has a meaning only if
/// <see cref="Ok"/>; the default value is not a success and has no problem, so make one through <see cref="Parsed"/>.
/// </summary>
public readonly record struct Parsed<T>(
    [property: MemberNotNullWhen(false, nameof(Parsed<>.Problem))] bool Ok, T Value, ParseProblem? Problem);

/// <summary>Makes <see cref="Parsed{T}"/> values.</summary>
public static class Parsed
{
    public static Parsed<T> Success<T>(T value) => new(true, value, null);

    public static Parsed<T> Failure<T>(ParseProblem problem) => new(false, default!, problem);
}
