namespace Tautline.Engine.Quantities;

/// <summary>Why a text could not be read.</summary>
/// <param name="Code">Stable and machine-readable, such as <c>unit-missing</c>; listed in <see cref="QuantityMessages"/>.</param>
/// <param name="Position">Where in the text, as a column counted from 0; the text's length if something is missing at its end.</param>
/// <param name="Message">What was found and why it cannot stand.</param>
/// <param name="Hint">What would be right.</param>
public sealed record ParseProblem(string Code, int Position, string Message, string Hint);
