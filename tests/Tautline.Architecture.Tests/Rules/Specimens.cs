#pragma warning disable CA1034, CA1051, CA1052, CA1810, CA1805, CA1823, CA1852, CA2211, CS0169, CS0414, IDE0044, IDE0051, IDE0052
namespace Tautline.Architecture.Tests.Rules;

/// <summary>Types that break the rules on purpose, so that the rules can be seen to catch them.</summary>
public static class Specimens
{
    public class OpenClass
    {
        internal class Within;

        public int Value { get; init; }
    }

    public record OpenRecord(int Value);

    public sealed class SealedClass;

    public sealed record SealedRecord(int Value);

    public abstract record AbstractRecord(int Value);

    public readonly record struct Point(int X);

    public interface IKind;

    public delegate void Callback();

    public static class Changing
    {
        public const int Fixed = 1;
        public static readonly int Once = 2;
        public static int Counter = 3;
        private static string? Hidden;

        public static int Setting { get; private set; }

        public static int Steady { get; } = 4;

        public static int Computed => Fixed + Once;

        // Its cached delegate is a static field that the compiler makes up.
        public static Func<int, int> Step() => x => x + 1;
    }

    public static class Exposing
    {
        public static readonly int[] Numbers = [1];
        internal static readonly Dictionary<string, int> Lookup = [];
        private static readonly int[] Kept = [2];

        public static int[,] Grid { get; } = { { 1 } };

        public static IReadOnlyList<int> Safe => Kept;
    }
}
