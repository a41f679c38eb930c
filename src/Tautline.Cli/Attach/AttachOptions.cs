using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Engine.Quantities;
using Tautline.Formats.Ground;

namespace Tautline.Cli.Attach;

/// <param name="File">The job.</param>
/// <param name="Ground">The survey, surface or grid.</param>
/// <param name="Answers">What the file itself does not say.</param>
/// <param name="Width">How far to each side of the lines the ground is kept.</param>
internal sealed record AttachOptions(string File, OutlineChoices Outline, UnitSystem? Units, string Ground, GroundOptions Answers, Length Width, Target Target);
