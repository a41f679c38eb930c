using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;

namespace Tautline.Cli.Input;

/// <summary>What an outline file leaves open.</summary>
/// <param name="Height">Height of the fence; 6 ft where nothing is said.</param>
/// <param name="System">The coordinate system of the file; the format's own where nothing is said.</param>
internal sealed record OutlineChoices(Length? Height, CoordinateSystemChoice? System);
