using System.Globalization;
using System.Xml;

namespace Tautline.Formats.Ground.LandXml;

/// <summary>Reads the numbers of an element's text piece by piece, however long the text is.</summary>
internal sealed class XmlNumbers(XmlReader reader, int most)
{
    private const int LongestNumber = 64;

    private readonly char[] _chunk = new char[4096];
    private readonly char[] _token = new char[LongestNumber];
    private int _length;

    /// <summary>The numbers of the last element read.</summary>
    public List<double> Found { get; } = [];

    /// <summary>Whether all of its text was numbers, and not too many.</summary>
    public bool Sound { get; private set; }

    /// <summary>Reads from an element's start to its end; elements within are passed over.</summary>
    public void Read()
    {
        Found.Clear();
        (Sound, _length) = (true, 0);
        if (reader.IsEmptyElement) return;
        var depth = reader.Depth;
        while (reader.Read() && reader.Depth > depth)
        {
            if (reader.NodeType is not (XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace)) continue;
            for (int got; (got = reader.ReadValueChunk(_chunk, 0, _chunk.Length)) > 0;) Take(_chunk.AsSpan(0, got));
        }
        EndToken();
    }

    private void Take(ReadOnlySpan<char> text)
    {
        foreach (var letter in text)
        {
            if (char.IsWhiteSpace(letter)) EndToken();
            else if (_length < LongestNumber) _token[_length++] = letter;
            else Sound = false;
        }
    }

    private void EndToken()
    {
        if (_length == 0) return;
        var text = _token.AsSpan(0, _length);
        _length = 0;
        var isNumber = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number);
        if (!isNumber || Found.Count >= most) Sound = false;
        else Found.Add(number);
    }
}
