using System.Globalization;
using System.Text;
using System.Xml;
using Tautline.Formats.Ground.LandXml;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Xml;

/// <summary>
/// XML read in passing, by local names, since namespaces differ by version or are missing. No document type, no entity, nothing from outside. Whoever handles an
/// element leaves the reader on its end, or on the element itself where it did not look inside.
/// </summary>
internal sealed class SiteXml
{
    private const int LongestText = 4000;
    private const int LongestToken = 64;

    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersFromEntities = 1 << 16,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        CloseInput = false,
    };

    private readonly XmlReader _reader;
    private readonly SiteCollector _found;
    private readonly char[] _chunk = new char[4096];
    private int _elements;

    private SiteXml(XmlReader reader, SiteCollector found) => (_reader, _found) = (reader, found);

    /// <summary>Where a fault would lie, in words: the elements around.</summary>
    public string Inside { get; set; } = "";

    public int Line => Math.Max(1, ((IXmlLineInfo)_reader).LineNumber);

    public string Root => _reader.LocalName;

    /// <summary>Reads a document; what is wrong with its text is told, and then nothing of it is used.</summary>
    public static void Read(Stream stream, SiteCollector found, Action<SiteXml> document)
    {
        var guard = new MarkupGuard(stream);
        SiteXml? xml = null;
        try
        {
            using var reader = XmlReader.Create(guard, Settings, Prefixes());
            xml = new(reader, found);
            reader.MoveToContent();
            document(xml);
            // What follows the root must be sound too, or the file was cut and glued.
            while (reader.Read()) { }
        }
        catch (XmlException fault)
        {
            // The words of the exception are not for people, and a trimmed build has none.
            var what = guard.HasDoctype ? SiteFindings.Dtd : SiteFindings.NotXml(xml?.Inside ?? "");
            found.Clear();
            found.Problems.AddAtLine(what, Math.Max(1, fault.LineNumber), Math.Max(1, fault.LinePosition));
        }
        catch (LandXmlStop stop)
        {
            found.Clear();
            found.Problems.Add(stop.Finding);
        }
        catch (DecoderFallbackException)
        {
            found.Clear();
            found.Problems.Add(SiteFindings.NotXml(xml?.Inside ?? ""));
        }
    }

    // Files in the wild use these prefixes without saying what they stand for.
    private static XmlParserContext Prefixes()
    {
        var names = new XmlNamespaceManager(new NameTable());
        foreach (var prefix in (string[])["gx", "kml", "atom", "xsi", "xal", "gpx", "gpxx", "gpxtpx", "wptx1", "ctx", "hexagon", "landxml", "lx"])
            names.AddNamespace(prefix, $"urn:{prefix}");
        return new(names.NameTable, names, null, XmlSpace.None);
    }

    public string? Attribute(string name) => _reader.GetAttribute(name);

    /// <summary>An attribute as a number; NaN where there is none or it is none.</summary>
    public double Number(string name) => Parse(_reader.GetAttribute(name));

    /// <summary>All attributes of the element, by local name.</summary>
    public IEnumerable<(string Name, string Value)> Attributes()
    {
        if (!_reader.MoveToFirstAttribute()) yield break;
        do yield return (_reader.LocalName, _reader.Value);
        while (_reader.MoveToNextAttribute());
        _reader.MoveToElement();
    }

    /// <summary>Goes through the elements right inside this one. What is not looked into is passed over.</summary>
    public void Each(Action<string> child)
    {
        if (_reader.IsEmptyElement) return;
        var depth = _reader.Depth;
        if (depth > _found.Options.Limits.Depth) throw new SiteStop(SiteFindings.TooDeep(_found.Options.Limits.Depth), Line);
        while (_reader.Read() && _reader.Depth > depth)
        {
            if (_reader.NodeType != XmlNodeType.Element) continue;
            Tick();
            child(_reader.LocalName);
            Pass(depth + 1);
        }
    }

    /// <summary>The text right inside the element, at most a few thousand letters of it.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        Chunks(part =>
        {
            if (text.Length < LongestText) text.Append(part[..Math.Min(part.Length, LongestText - text.Length)]);
        });
        return text.ToString().Trim();
    }

    /// <summary>The number that is the element's text; NaN where it is none.</summary>
    public double TextNumber() => Parse(Text());

    /// <summary>All numbers of the element's text, split by blanks; null where something else is among them.</summary>
    public List<double>? Numbers(int most = 60_000_000)
    {
        List<double> numbers = [];
        var sound = true;
        Tokens(token =>
        {
            var number = Parse(token);
            sound &= double.IsFinite(number) && numbers.Count < most;
            if (sound) numbers.Add(number);
        });
        return sound ? numbers : null;
    }

    /// <summary>The words of the element's text, piece by piece, however long it is.</summary>
    public void Tokens(TokenAction use)
    {
        var word = new char[LongestToken];
        var length = 0;
        Chunks(part =>
        {
            foreach (var letter in part)
            {
                if (!char.IsWhiteSpace(letter))
                {
                    if (length < LongestToken) word[length++] = letter;
                }
                else if (length > 0)
                {
                    use(word.AsSpan(0, length));
                    length = 0;
                }
            }
        });
        if (length > 0) use(word.AsSpan(0, length));
    }

    public delegate void TokenAction(ReadOnlySpan<char> token);

    /// <summary>A number as files write it: a dot at either end, E or D; NaN where it is none.</summary>
    public static double Parse(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)) return number;
        if (text.Length is 0 or > 400) return double.NaN;
        Span<char> other = stackalloc char[text.Length];
        text.CopyTo(other);
        other.Replace('D', 'E');
        other.Replace('d', 'e');
        return double.TryParse(other, NumberStyles.Float, CultureInfo.InvariantCulture, out number) ? number : double.NaN;
    }

    /// <summary>The text of the element piece by piece; elements inside are passed over.</summary>
    private void Chunks(TokenAction use)
    {
        if (_reader.IsEmptyElement) return;
        var depth = _reader.Depth;
        while (_reader.Read() && _reader.Depth > depth)
        {
            if (_reader.NodeType == XmlNodeType.Element) Pass(depth + 1);
            else if (_reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace)
                for (int got; (got = _reader.ReadValueChunk(_chunk, 0, _chunk.Length)) > 0;) use(_chunk.AsSpan(0, got));
        }
    }

    /// <summary>Moves to the end of an element that nobody looked into.</summary>
    private void Pass(int depth)
    {
        if (_reader.NodeType != XmlNodeType.Element || _reader.Depth != depth || _reader.IsEmptyElement) return;
        while (_reader.Read() && _reader.Depth > depth)
        {
            if (_reader.Depth > 10_000) throw new SiteStop(SiteFindings.TooDeep(10_000), Line);
        }
    }

    private void Tick()
    {
        if ((++_elements & 0xFFF) == 0) _found.Options.Cancelled.ThrowIfCancellationRequested();
    }
}
