namespace Tautline.Formats.Ground.Grids;

/// <summary>Cuts a text into words as it streams by; knows the line of each. Words longer than any number come cut.</summary>
internal sealed class GridTokens(Stream stream)
{
    private const int LongestWord = 256;

    private readonly byte[] _buffer = new byte[1 << 16];
    private int _at;
    private int _end;
    private int _start;
    private byte _last;

    /// <summary>Line of the last word, from 1.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>The last word.</summary>
    public ReadOnlySpan<byte> Word => _buffer.AsSpan(_start, _at - _start);

    /// <summary>Goes to the next word; false at the end.</summary>
    public bool Next()
    {
        if (!SkipBlanks()) return false;
        _start = _at;
        while ((_at < _end || Fill()) && _buffer[_at] > ' ' && _at - _start < LongestWord) _at++;
        return true;
    }

    private bool SkipBlanks()
    {
        while (true)
        {
            _start = _at;
            if (_at == _end && !Fill()) return false;
            var letter = _buffer[_at];
            if (letter > ' ') return true;
            // LF, CR LF and a lone CR each end one line.
            if (letter == '\r' || (letter == '\n' && _last != '\r')) Line++;
            _last = letter;
            _at++;
        }
    }

    /// <summary>Keeps the word begun and reads on behind it.</summary>
    private bool Fill()
    {
        _buffer.AsSpan(_start, _end - _start).CopyTo(_buffer);
        (_at, _end, _start) = (_at - _start, _end - _start, 0);
        var got = stream.Read(_buffer.AsSpan(_end));
        _end += got;
        return got > 0;
    }
}
