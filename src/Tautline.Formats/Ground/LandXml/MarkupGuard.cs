using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.LandXml;

/// <summary>
/// Passes XML on, notes a document type, and stops where one tag goes on for longer than any tag does: the reader of XML would hold all of it.
/// </summary>
internal sealed class MarkupGuard(Stream inner) : ForwardStream
{
    private const int LongestTag = 1 << 20; // bytes

    private long _since = -1; // bytes since a tag began; -1 outside of tags
    private int _before; // the last two letters

    /// <summary>Whether a document type declaration went by.</summary>
    public bool HasDoctype { get; private set; }

    public override int Read(Span<byte> buffer)
    {
        var got = inner.Read(buffer);
        foreach (var letter in buffer[..got])
        {
            // UTF-16 has a zero beside each letter.
            if (letter != 0) Note(letter);
            if (letter == '<') _since = 0;
            else if (letter == '>') _since = -1;
            else if (_since >= 0 && ++_since > LongestTag) throw new LandXmlStop(LandXmlFindings.LongTag);
        }
        return got;
    }

    private void Note(byte letter)
    {
        HasDoctype |= _before == ('<' << 8 | '!') && letter == (byte)'D';
        _before = (_before << 8 | letter) & 0xFFFF;
    }
}
