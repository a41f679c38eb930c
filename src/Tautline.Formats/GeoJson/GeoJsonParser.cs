using System.Collections.Immutable;
using System.Text.Json;
using Tautline.Formats.Import;

namespace Tautline.Formats.GeoJson;

/// <summary>
/// Reads JSON text into <see cref="GeoObject"/>s in one pass, keeping the place of everything a problem may be about.
/// Members may come in any order; the last of two with one name counts. Throws only <see cref="JsonStop"/>.
/// </summary>
internal ref struct GeoJsonParser
{
    /// <summary>Arrays and objects within each other. A feature in a collection of geometries needs about ten.</summary>
    public const int DeepestNesting = 64;

    private readonly ReadOnlyMemory<byte> _text;
    private readonly List<SystemClaim> _claims;
    private Utf8JsonReader _reader;

    private GeoJsonParser(ReadOnlyMemory<byte> text, List<SystemClaim> claims)
    {
        _text = text;
        _claims = claims;
        // Not final: the reader then tells "the text ends here" (no more tokens) from "this is wrong" (exception).
        var state = new JsonReaderState(new JsonReaderOptions { MaxDepth = DeepestNesting + 2 });
        _reader = new Utf8JsonReader(text.Span, isFinalBlock: false, state);
    }

    /// <summary>The root object and every claim of a coordinate system in the text.</summary>
    public static GeoObject Parse(ReadOnlyMemory<byte> text, List<SystemClaim> claims)
    {
        var parser = new GeoJsonParser(text, claims);
        try
        {
            return parser.Root();
        }
        catch (JsonException fault)
        {
            throw new JsonStop(GeoJsonFindings.NotJson(parser.At(fault)), parser.OffsetOf(fault));
        }
    }

    private GeoObject Root()
    {
        Next();
        if (_reader.TokenType != JsonTokenType.StartObject) throw new JsonStop(GeoJsonFindings.RootNotObject, Offset);
        var root = Object();
        RefuseMore();
        return root;
    }

    private readonly int Offset => (int)_reader.TokenStartIndex;

    private void RefuseMore()
    {
        var rest = _text.Span[(int)_reader.BytesConsumed..];
        var blank = rest.IndexOfAnyExcept(" \t\r\n"u8);
        if (blank < 0) return;
        var finding = rest[blank] is (byte)'{' or 0x1E ? GeoJsonFindings.SeveralTexts : GeoJsonFindings.MoreAfterEnd;
        throw new JsonStop(finding, (int)_reader.BytesConsumed + blank);
    }

    private void Next()
    {
        if (!_reader.Read()) throw new JsonStop(GeoJsonFindings.CutOff(_reader.CurrentDepth), _text.Length);
        if (_reader.CurrentDepth > DeepestNesting) throw new JsonStop(GeoJsonFindings.TooDeep, Offset);
    }

    private GeoObject Object()
    {
        var result = new GeoObject(Offset);
        for (Next(); _reader.TokenType != JsonTokenType.EndObject; Next())
        {
            var name = KnownName();
            Next();
            Member(result, name);
        }

        return result;
    }

    private readonly string? KnownName()
    {
        foreach (var name in (ReadOnlySpan<string>)["type", "coordinates", "geometry", "geometries", "features", "properties", "id", "crs", "srs"])
        {
            if (_reader.ValueTextEquals(name)) return name;
        }

        return null;
    }

    private void Member(GeoObject target, string? name)
    {
        switch (name, _reader.TokenType)
        {
            case ("type", JsonTokenType.String): target.Type = JsonText.Of(Element()); break;
            case ("id", JsonTokenType.String or JsonTokenType.Number): target.Id = JsonText.Of(Element()); break;
            case ("coordinates", JsonTokenType.StartArray): target.Coordinates = Coordinates(); break;
            case ("geometry", JsonTokenType.StartObject): target.Geometry = Object(); break;
            case ("geometries", JsonTokenType.StartArray): target.Geometries = Objects(); break;
            case ("features", JsonTokenType.StartArray): target.Features = Objects(); break;
            case ("properties", JsonTokenType.StartObject): target.Properties = Properties(); break;
            case ("crs" or "srs", _): _claims.Add(Claim(name)); break;
            default: Skip(); break;
        }
    }

    private List<GeoObject> Objects()
    {
        List<GeoObject> all = [];
        for (Next(); _reader.TokenType != JsonTokenType.EndArray; Next())
        {
            if (_reader.TokenType == JsonTokenType.StartObject) all.Add(Object());
            else
            {
                all.Add(new GeoObject(Offset)); // without a type: told as such
                Skip();
            }
        }

        return all;
    }

    private CoordinateNode Coordinates()
    {
        var node = new CoordinateNode(Offset);
        for (Next(); _reader.TokenType != JsonTokenType.EndArray; Next())
        {
            switch (_reader.TokenType)
            {
                case JsonTokenType.Number: node.AddNumber(Number()); break;
                case JsonTokenType.StartArray: node.Add(Coordinates()); break;
                default:
                    node.AddOther();
                    Skip();
                    break;
            }
        }

        return node;
    }

    private readonly double Number() => _reader.TryGetDouble(out var value) ? value : double.NaN;

    private SystemClaim Claim(string member)
    {
        var offset = Offset;
        return SystemClaim.Of(member, Element(), offset);
    }

    private ImmutableSortedDictionary<string, string> Properties()
    {
        var all = GeoObject.NoProperties.ToBuilder();
        foreach (var property in Element().EnumerateObject()) all[NameOf(property)] = JsonText.Of(property.Value);
        return all.ToImmutable();
    }

    private static string NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return "?"; // half a surrogate pair in the name
        }
    }

    // The value at the reader, whole. Its bytes are parsed a second time; they are few.
    private JsonElement Element()
    {
        var start = Offset;
        Skip();
        using var document = JsonDocument.Parse(_text[start..(int)_reader.BytesConsumed]);
        return document.RootElement.Clone();
    }

    private void Skip()
    {
        if (_reader.TokenType is not (JsonTokenType.StartObject or JsonTokenType.StartArray)) return;
        var depth = _reader.CurrentDepth;
        do Next();
        while (_reader.CurrentDepth > depth);
    }

    private readonly int OffsetOf(JsonException fault)
    {
        var line = fault.LineNumber ?? 0;
        var start = 0;
        for (; line > 0; line--) start += _text.Span[start..].IndexOf((byte)'\n') + 1;
        return Math.Min(start + (int)(fault.BytePositionInLine ?? 0), _text.Length);
    }

    private readonly string At(JsonException fault)
    {
        var rest = _text.Span[OffsetOf(fault)..];
        var end = rest.IndexOfAny(" \t\r\n,"u8);
        rest = rest[..Math.Min(end < 0 ? rest.Length : Math.Max(end, 1), 12)];
        return System.Text.Encoding.UTF8.GetString(rest).Trim('\uFFFD').Trim();
    }
}
