using System.Globalization;
using Tautline.Engine.Jobs;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes a spec with everything it states, in one line.</summary>
internal sealed class SpecWriter(TapePage page)
{
    private readonly List<string> parts = [];

    public void Write(Spec spec, string name)
    {
        parts.Clear();
        parts.AddRange(["spec", page.Quoted(name), "height", page.Length(spec.Height)]);
        if (spec.Mesh is { } mesh) parts.AddRange(["mesh", page.Inches(mesh)]);
        Word("gauge", spec.Gauge);
        Word("selvage", spec.Selvage);
        Word("line-post", spec.LinePost);
        Word("terminal-post", spec.TerminalPost);
        Frame(spec);
        Dress(spec);
        page.Add(string.Join(' ', parts));
    }

    private void Frame(Spec spec)
    {
        Word("rail", spec.RailSection);
        Word("top", spec.Top);
        Word("middle", spec.Middle);
        Word("bottom", spec.Bottom);
        Word("brace", spec.Brace);
        if (spec.Roll is { } roll) parts.AddRange(["roll", page.Length(roll)]);
        if (spec.Laced is { } laced) parts.AddRange(["laced", Number(laced)]);
        Word("line-support", spec.LineSupport);
        Word("terminal-support", spec.TerminalSupport);
    }

    private void Dress(Spec spec)
    {
        if (spec.Barb is { } barb)
        {
            parts.AddRange(["barb", Number(barb.Strands), page.Word(barb.Lean)]);
            Word("height-is", barb.HeightIs);
        }
        Word("coating", spec.Coating);
        Word("colour", spec.Colour);
        if (spec.Slats is { } slats)
        {
            parts.AddRange(["slats", Number(slats.PerTenFeet)]);
            Word("lock", slats.Lock);
        }
        if (spec.Screen is { } screen) parts.AddRange(["screen", page.Length(screen.Height)]);
        if (spec.Screen?.Roll is { } of) parts.AddRange(["screen-roll", page.Length(of)]);
        if (spec.Concertina is { } coils) parts.AddRange(["concertina", page.Length(coils.Covers), "ties", page.Inches(coils.TieSpacing)]);
    }

    private void Word(string clause, string? value)
    {
        if (value is not null) parts.AddRange([clause, page.Word(value)]);
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
