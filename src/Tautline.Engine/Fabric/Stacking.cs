using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

/// <summary>Makes the stack card of a terminal.</summary>
public static class Stacking
{
    /// <summary>A thing at its height under the top of the highest fabric.</summary>
    private readonly record struct Placed(Length Down, StackKind Kind, string Name, int Count, double Diamond);

    public static StackCard Card(TerminalParts terminal)
    {
        var problems = new ProblemList();
        List<StackMove> moves = [];
        List<Placed> placed = [.. terminal.Parts.Select(p => new Placed(Down(p, terminal), p.Kind, p.Name, p.Count, p.Diamond))];
        foreach (var stack in terminal.Ends.Where(e => e.Bands.Count > 0).GroupBy(Same))
            placed.AddRange(Bands([.. stack], terminal, moves, problems));
        return new StackCard([.. Items(placed), Last(terminal.Top)], moves, problems.Found);
    }

    /// <summary>Ends whose bands stack directly on one another: same places, same diamonds, same top.</summary>
    private static (string, double, Length, Length, Length, double) Same(StackEnd end)
        => (string.Join(' ', end.Bands.Diamonds.Select(DiamondText.Number)), end.Rows, end.Pitch, end.Drop, end.Limit, end.EndMost);

    private static IEnumerable<Placed> Bands(List<StackEnd> stack, TerminalParts terminal, List<StackMove> moves, ProblemList problems)
    {
        var end = stack[0];
        var name = string.Join(" and ", stack.Select(e => e.Name));
        var placer = new StackPlacer(end, stack.Count, [.. terminal.Parts.Select(p => (Own(Down(p, terminal), end), p))], terminal.BandWidth);
        foreach (var (from, to) in end.Bands.Diamonds.Zip(placer.Place()))
        {
            if (to != from) moves.Add(new StackMove(name, from, to, placer.InTheWay(from)?.Name ?? "its neighbour, which gave way"));
            if (placer.InTheWay(to) is { } part) problems.Add(ProblemCode.StackClash, new(""), $"tension band of {name}", DiamondText.Number(to), part.Name);
            yield return new Placed(to * end.Pitch + end.Drop, StackKind.TensionBand, name, stack.Count, to);
        }
    }

    /// <summary>Under the top of the highest fabric.</summary>
    private static Length Down(StackPart part, TerminalParts terminal)
        => part.Diamond * terminal.Ends[part.End].Pitch + terminal.Ends[part.End].Drop;

    /// <summary>A height under the highest top, in diamonds of an end.</summary>
    private static double Own(Length down, StackEnd end) => (down - end.Drop) / end.Pitch;

    /// <summary>From the lowest up; neighbours of a kind and name are one step.</summary>
    private static IEnumerable<StackItem> Items(List<Placed> placed)
    {
        List<Placed> step = [];
        foreach (var thing in placed.OrderByDescending(p => p.Down.Nanometres))
        {
            if (step.Count > 0 && (step[0].Kind, step[0].Name) != (thing.Kind, thing.Name))
            {
                yield return Item(step);
                step = [];
            }
            step.Add(thing);
        }
        if (step.Count > 0) yield return Item(step);
    }

    private static StackItem Item(List<Placed> step)
        => new(step[0].Kind, step[0].Name, step.Sum(p => p.Count), [.. step.Select(p => p.Diamond)], HangWords.Note(step[0].Kind, step[0].Count));

    private static StackItem Last(StackKind top) => new(top, "", 1, [], HangWords.Note(top, 1));
}
