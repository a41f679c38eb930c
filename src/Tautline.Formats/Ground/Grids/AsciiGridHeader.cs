using System.Globalization;
using System.Text;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Grids;

/// <summary>The keys at the head of an ASCII grid, in any order and case (Esri ASCII raster format).</summary>
internal sealed class AsciiGridHeader(ProblemList problems)
{
    private static readonly string[] Known =
        ["NCOLS", "NROWS", "XLLCORNER", "XLLCENTER", "YLLCORNER", "YLLCENTER", "CELLSIZE", "DX", "DY", "NODATA_VALUE", "NODATA"];

    private readonly Dictionary<string, string> _values = [];

    /// <summary>The mark of a cell without ground; null where none is stated.</summary>
    public double? NoData { get; private set; }

    /// <summary>Reads the keys; afterwards the first height is the word of the tokens. Null where the header does not make a grid.</summary>
    public GridShape? Read(GridTokens tokens)
    {
        while (tokens.Next() && IsKey(tokens.Word)) ReadKey(tokens);
        NoData = (_values.GetValueOrDefault("NODATA_VALUE") ?? _values.GetValueOrDefault("NODATA")) is { } text ? NoDataOf(text) : null;
        return Shape();
    }

    private static bool IsKey(ReadOnlySpan<byte> word) =>
        char.IsAsciiLetter((char)word[0]) && !Ascii.EqualsIgnoreCase(word, "nan"u8) && !word.StartsWith("inf"u8) && !word.StartsWith("Inf"u8);

    private void ReadKey(GridTokens tokens)
    {
        var (name, line) = (Encoding.Latin1.GetString(tokens.Word), tokens.Line);
        var key = name.ToUpperInvariant().Replace("CENTRE", "CENTER", StringComparison.Ordinal);
        if (!tokens.Next()) return;
        var value = Encoding.Latin1.GetString(tokens.Word);
        if (!Known.Contains(key)) problems.AddAtLine(AsciiGridFindings.KeyNotKnown(name, value), line);
        else if (!_values.TryAdd(key, value)) problems.AddAtLine(AsciiGridFindings.KeyTwice(name), line);
    }

    private GridShape? Shape()
    {
        TellMissing();
        var (columns, rows) = (Whole("NCOLS"), Whole("NROWS"));
        var (cellEast, cellNorth) = (Number("DX") ?? Number("CELLSIZE"), Number("DY") ?? Number("CELLSIZE"));
        var (west, south) = (Corner("XLL", cellEast), Corner("YLL", cellNorth));
        if (problems.HasErrors || columns is not { } c || rows is not { } r || cellEast is not { } dx || cellNorth is not { } dy) return null;
        return west is { } x && south is { } y ? new(r, c, x, y + r * dy, dx, dy) : null;
    }

    private void TellMissing()
    {
        var missing = new List<string>();
        foreach (var key in (string[])["NCOLS", "NROWS"])
            if (!_values.ContainsKey(key)) missing.Add(key.ToLowerInvariant());
        foreach (var axis in (string[])["XLL", "YLL"])
        {
            var (corner, center) = (_values.ContainsKey($"{axis}CORNER"), _values.ContainsKey($"{axis}CENTER"));
            if (!corner && !center) missing.Add($"{axis}corner".ToLowerInvariant());
            if (corner && center) problems.Add(AsciiGridFindings.KeyTwice(axis.ToLowerInvariant()));
        }
        if (!_values.ContainsKey("CELLSIZE") && !(_values.ContainsKey("DX") && _values.ContainsKey("DY"))) missing.Add("cellsize");
        if (missing.Count > 0) problems.Add(AsciiGridFindings.Missing(string.Join(", ", missing)));
    }

    // A centre is that of the lower left cell: its corner lies half a cell outside.
    private double? Corner(string axis, double? cell) => Number($"{axis}CORNER") ?? Number($"{axis}CENTER") - cell / 2;

    private int? Whole(string key)
    {
        if (!_values.TryGetValue(key, out var text)) return null;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && number > 0) return number;
        problems.Add(AsciiGridFindings.BadHeader(key.ToLowerInvariant(), text, "a whole number above zero"));
        return null;
    }

    private double? Number(string key)
    {
        if (!_values.TryGetValue(key, out var text)) return null;
        if (Parse(text) is { } number && double.IsFinite(number)) return number;
        problems.Add(AsciiGridFindings.BadHeader(key.ToLowerInvariant(), text, "a number"));
        return null;
    }

    private double? NoDataOf(string text)
    {
        if (Parse(text) is { } number) return number;
        if (text.Contains('#', StringComparison.Ordinal)) return double.NaN;
        problems.Add(AsciiGridFindings.BadHeader("nodata_value", text, "a number"));
        return null;
    }

    private static double? Parse(string text) =>
        double.TryParse(text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
}
