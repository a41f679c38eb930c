using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Tautline.Engine.Jobs;

/// <summary>Finds lines and columns in JSON text, counted from 1, for messages.</summary>
public static class JsonPlace
{
    /// <summary>'line l, column c' of a byte offset.</summary>
    public static string At(ReadOnlySpan<byte> utf8, long offset)
    {
        var before = utf8[..(int)Math.Min(offset, utf8.Length)];
        var line = before.Count((byte)'\n') + 1;
        var column = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
        return string.Create(CultureInfo.InvariantCulture, $"line {line}, column {column}");
    }

    /// <summary>Where the value of a path such as lines[0].vertices[2].leg.grade starts; nothing where the path leads nowhere.</summary>
    public static string? Of(ReadOnlySpan<byte> utf8, string path)
    {
        var reader = new Utf8JsonReader(utf8);
        if (!reader.Read()) return null;
        foreach (var step in path.Split(['.', '['], StringSplitOptions.RemoveEmptyEntries))
            if (!(step[^1] == ']' ? ToItem(ref reader, int.Parse(step[..^1], CultureInfo.InvariantCulture)) : ToProperty(ref reader, step)))
                return null;
        return At(utf8, reader.TokenStartIndex);
    }

    private static bool ToProperty(ref Utf8JsonReader reader, string name)
    {
        if (reader.TokenType != JsonTokenType.StartObject) return false;
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var found = reader.ValueTextEquals(name);
            reader.Read();
            if (found) return true;
            reader.Skip();
        }
        return false;
    }

    private static bool ToItem(ref Utf8JsonReader reader, int index)
    {
        if (reader.TokenType != JsonTokenType.StartArray) return false;
        for (var i = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; i++)
        {
            if (i == index) return true;
            reader.Skip();
        }
        return false;
    }
}
