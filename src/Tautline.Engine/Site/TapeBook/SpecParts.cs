using Tautline.Engine.Jobs;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Reads the clauses of a spec that dress the fabric or hold the posts; null where one cannot be read.</summary>
internal static class SpecParts
{
    private const string BarbForm = "barb 3 left height-is fabric";
    private const string ConcertinaForm = "concertina 20' ties 18\"";

    public static Spec? Laced(TapeCursor c, Spec s)
    {
        var column = c.Column;
        if (c.Count("the number of widths", "laced 2") is not { } widths) return null;
        if (widths is < 1 or > 4) c.Problem(TapeTexts.LacedRange, column, widths);
        return s with { Laced = widths };
    }

    public static Spec? LineSupport(TapeCursor c, Spec s)
    {
        const string what = "'concrete', 'driven', 'cored' or 'plated'";
        return c.OneOf(what, "line-support driven", "concrete", "driven", "cored", "plated") is { } held ? s with { LineSupport = held } : null;
    }

    public static Spec? TerminalSupport(TapeCursor c, Spec s)
    {
        const string what = "'concrete', 'cored' or 'plated'";
        return c.OneOf(what, "terminal-support cored", "concrete", "cored", "plated") is { } held ? s with { TerminalSupport = held } : null;
    }

    /// <summary>Strands, the hand they lean to, and whether the height counts them; the last may be left for the plan to ask.</summary>
    public static Spec? Barb(TapeCursor c, Spec s)
    {
        if (c.Count("the number of strands", BarbForm) is not { } strands) return null;
        if (c.OneOf("'left', 'right', 'up' or 'both'", BarbForm, "left", "right", "up", "both") is not { } lean) return null;
        string? counts = null;
        if (c.Take("height-is") && (counts = c.OneOf("'fabric' or 'overall'", BarbForm, "fabric", "overall")) is null) return null;
        return s with { Barb = new Barb { Strands = strands, Lean = lean, HeightIs = counts } };
    }

    public static Spec? Coating(TapeCursor c, Spec s)
        => c.OneOf("'zinc', 'aluminum' or 'polymer'", "coating zinc", "zinc", "aluminum", "polymer") is { } coating ? s with { Coating = coating } : null;

    public static Spec? Colour(TapeCursor c, Spec s)
    {
        const string what = "'green', 'olive-green', 'brown' or 'black'";
        return c.OneOf(what, "colour black", "green", "olive-green", "brown", "black") is { } colour ? s with { Colour = colour } : null;
    }

    public static Spec? Slats(TapeCursor c, Spec s)
    {
        const string form = "slats 37 lock bottom";
        if (c.Number("the number of slats in ten feet", form) is not { } slats) return null;
        string? locked = null;
        if (c.Take("lock") && (locked = c.OneOf("'top' or 'bottom'", form, "top", "bottom")) is null) return null;
        return s with { Slats = new Slats { PerTenFeet = slats, Lock = locked } };
    }

    public static Spec? Screen(TapeCursor c, Spec s)
    {
        if (c.Length() is not { } height) return null;
        if (!c.Take("screen-roll")) return s with { Screen = new Screen { Height = height } };
        return c.Length() is { } roll ? s with { Screen = new Screen { Height = height, Roll = roll } } : null;
    }

    public static Spec? Concertina(TapeCursor c, Spec s)
    {
        if (c.Length() is not { } covers || c.OneOf("'ties'", ConcertinaForm, "ties") is null) return null;
        return c.Length() is { } ties ? s with { Concertina = new Concertina { Covers = covers, TieSpacing = ties } } : null;
    }
}
