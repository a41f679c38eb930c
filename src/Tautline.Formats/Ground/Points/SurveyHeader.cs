namespace Tautline.Formats.Ground.Points;

/// <summary>
/// A row that names the columns. North and east named so settle the order; X and Y do not, since offices differ in which of them is north.
/// </summary>
/// <param name="Line">Index of the line.</param>
/// <param name="Order">The columns it names; those with other names are passed over.</param>
/// <param name="Certain">Whether it says north and east.</param>
internal sealed record SurveyHeader(int Line, ColumnOrder Order, bool Certain)
{
    // Trade words of English, Spanish and German; common practice, no source.
    private static readonly (char Letter, string[] Words)[] Names =
    [
        ('P', ["P", "PT", "PNT", "POINT", "POINTS", "NO", "NR", "ID", "NUM", "NUMBER", "NAME", "PUNTO", "PUNKT"]),
        ('N', ["N", "NORTH", "NORTHING", "NORTE", "HOCHWERT"]),
        ('E', ["E", "EAST", "EASTING", "ESTE", "RECHTSWERT"]),
        ('Y', ["Y"]),
        ('X', ["X"]),
        ('Z', ["Z", "H", "EL", "ELEV", "ELEVATION", "HEIGHT", "LEVEL", "RL", "ALTITUDE", "COTA", "ELEVACION", "ELEVACIÓN", "HÖHE", "HOEHE"]),
        ('D', ["D", "DESC", "DESCRIPTION", "CODE", "NOTE", "REMARK", "FEATURE", "RAWDESC", "DESCRIPCION", "DESCRIPCIÓN"]),
    ];

    /// <summary>The header a row is; null where it is none.</summary>
    public static SurveyHeader? Of(int line, List<RowField> fields)
    {
        var letters = fields.Select(f => LetterOf(f.Text)).ToArray();
        // A second column of one kind ("Note", "Remark") is passed over.
        for (var i = 1; i < letters.Length; i++)
            if (letters.AsSpan(0, i).Contains(letters[i])) letters[i] = '-';
        var text = new string(letters);
        var certain = text.Contains('N') && text.Contains('E');
        if (certain) text = text.Replace('X', '-').Replace('Y', '-');
        return ColumnOrder.Find(text) is { } order ? new(line, order, certain) : null;
    }

    private static char LetterOf(string name)
    {
        var cut = name.IndexOfAny(['(', '[']);
        var words = (cut < 0 ? name : name[..cut]).ToUpperInvariant().Split([' ', '_', '.', '#', '-', '/'], StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0) return '-';
        foreach (var (letter, known) in Names)
            if (known.Contains(words[0]) || known.Contains(string.Concat(words))) return letter;
        return '-';
    }
}
