namespace Tautline.Engine;

internal static class Placeholder;
