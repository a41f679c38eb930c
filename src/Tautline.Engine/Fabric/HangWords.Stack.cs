using Tautline.Engine.Plans;

namespace Tautline.Engine.Fabric;

public static partial class HangWords
{
    /// <summary>A stack card: steps in sliding order, then what gave way.</summary>
    public static IReadOnlyList<string> Stack(StackCard card) => [.. card.Items.Select(Slide), .. card.Moves.Select(Moved)];

    /// <summary>What to mind with a step of a stack.</summary>
    /// <param name="each">How many sit at each of its places.</param>
    public static string Note(StackKind kind, int each) => (kind, each) switch
    {
        (StackKind.TensionBand, > 1) => $"{each} at each diamond, one directly on the other",
        (StackKind.RailEndBand or StackKind.BraceBand, _) => "holds a rail end",
        (StackKind.RodBand, _) => "holds the truss rod; last turn of the rod when all else is done",
        (StackKind.BarbArm or StackKind.Cap, _) => "last, over all bands",
        _ => "",
    };

    private static string Slide(StackItem item)
    {
        var count = PlanWords.Count(item.Count, Kind(item.Kind));
        var named = item.Name.Length > 0 ? $"{count} ({item.Name})" : count;
        var at = item.Diamonds.Count > 0 ? $" at {string.Join(", ", item.Diamonds.Select(DiamondText.Number))}" : "";
        return named + at + (item.Note.Length > 0 ? $": {item.Note}" : "");
    }

    private static string Moved(StackMove move)
        => $"The band at {DiamondText.Number(move.From)} moves {DiamondText.Number(Math.Abs(move.To - move.From))} {(move.To > move.From ? "down" : "up")} to {DiamondText.Number(move.To)}: it misses {move.For}.";

    private static string Kind(StackKind kind) => kind switch
    {
        StackKind.TensionBand => "tension band",
        StackKind.BraceBand => "brace band",
        StackKind.RodBand => "rod band",
        StackKind.RailEndBand => "rail end band",
        StackKind.WireBand => "wire band",
        StackKind.Hinge => "hinge",
        StackKind.BarbArm => "barb arm",
        StackKind.Cap => "cap",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "a part without words"),
    };
}
