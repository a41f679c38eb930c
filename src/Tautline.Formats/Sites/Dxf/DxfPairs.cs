using System.Buffers.Text;
using System.Globalization;
using System.Text;
using Tautline.Formats.Import;

namespace Tautline.Formats.Sites.Dxf;

/// <summary>Reads the pairs of group code and value of an ASCII drawing, one after the other, without holding the file.</summary>
internal sealed class DxfPairs(Stream stream, ProblemList problems)
{
    private const int LongestLine = 1 << 20;

    private byte[] _buffer = new byte[1 << 16];
    private int _at, _end, _valueFrom, _valueLength;
    private bool _atEnd, _cutLine;

    /// <summary>Group code of the pair.</summary>
    public int Code { get; private set; }

    /// <summary>The value as written, without blanks at either end.</summary>
    public ReadOnlySpan<byte> Value => _buffer.AsSpan(_valueFrom, _valueLength).Trim(" \t"u8);

    /// <summary>The value with its blanks, for texts.</summary>
    public ReadOnlySpan<byte> Raw => _buffer.AsSpan(_valueFrom, _valueLength);

    /// <summary>Line of the group code, from 1.</summary>
    public int Line { get; private set; }

    public long BytesRead { get; private set; }

    private int _lines;

    /// <summary>Moves to the next pair; false at the end of the file. A line that is no group code is told and passed over.</summary>
    public bool Next()
    {
        while (ReadLine(out var from, out var length))
        {
            var text = _buffer.AsSpan(from, length).Trim(" \t"u8);
            if (text is [0x1A, ..]) return false;
            Line = _lines;
            if (!Utf8Parser.TryParse(text, out int code, out var used) || used != text.Length)
            {
                if (!text.IsEmpty) problems.AddAtLine(DxfFindings.NotACode(Shown(text)), Line);
                continue;
            }
            Code = code;
            if (!ReadLine(out _valueFrom, out _valueLength)) return false;
            if (_cutLine) problems.AddAtLine(DxfFindings.LongLine, _lines);
            return true;
        }
        return false;
    }

    /// <summary>The value as a number; NaN where it is none.</summary>
    public double Number()
    {
        var text = Value;
        if (Utf8Parser.TryParse(text, out double number, out var used) && used == text.Length) return number;
        var other = Encoding.Latin1.GetString(text).Replace('D', 'E').Replace('d', 'e');
        if (double.TryParse(other, NumberStyles.Float, CultureInfo.InvariantCulture, out number)) return number;
        problems.AddAtLine(DxfFindings.NotANumber(Code, Shown(text)), Line + 1);
        return double.NaN;
    }

    public bool Is(ReadOnlySpan<byte> text) => Value.SequenceEqual(text);

    private static string Shown(ReadOnlySpan<byte> text) => Encoding.Latin1.GetString(text[..Math.Min(text.Length, 24)]);

    /// <summary>A line without its end, which may be LF, CR LF or CR. The bytes stay in place until the next line is read.</summary>
    private bool ReadLine(out int from, out int length)
    {
        var seen = 0;
        _cutLine = false;
        while (true)
        {
            var found = _buffer.AsSpan(_at + seen, _end - _at - seen).IndexOfAny((byte)'\n', (byte)'\r');
            if (found >= 0)
            {
                var stop = _at + seen + found;
                // A CR at the very end of the buffer may be half of a CR LF.
                if (_buffer[stop] != '\r' || stop + 1 < _end || _atEnd) return Take(stop, stop + (_buffer[stop] == '\r' && stop + 1 < _end && _buffer[stop + 1] == '\n' ? 2 : 1), out from, out length);
            }
            seen = _end - _at - (found >= 0 ? 1 : 0);
            if (_atEnd) return _end > _at ? Take(_end, _end, out from, out length) : Nothing(out from, out length);
            Fill(ref seen);
        }
    }

    private bool Take(int stop, int next, out int from, out int length)
    {
        (from, length) = (_at, stop - _at);
        _at = next;
        _lines++;
        return true;
    }

    private static bool Nothing(out int from, out int length)
    {
        (from, length) = (0, 0);
        return false;
    }

    private void Fill(ref int seen)
    {
        if (_at > 0)
        {
            _buffer.AsSpan(_at, _end - _at).CopyTo(_buffer);
            (_at, _end) = (0, _end - _at);
        }
        if (_end == _buffer.Length)
        {
            if (_buffer.Length < LongestLine) Array.Resize(ref _buffer, 2 * _buffer.Length);
            else
            {
                // The rest of so long a line is dropped.
                (_end, seen, _cutLine) = (_buffer.Length / 2, _buffer.Length / 2, true);
            }
        }
        var got = stream.Read(_buffer, _end, _buffer.Length - _end);
        BytesRead += got;
        if (got == 0) _atEnd = true;
        _end += got;
    }
}
