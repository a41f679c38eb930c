using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Tautline.Papers.Paper;

/// <summary>
/// Takes chance out of a PDF that PDFsharp 6.2.4 has written. PDFsharp draws a fresh random number for the file
/// identifier, for the two identifiers in the XMP packet and for the six-letter tag of each font subset, and has
/// no setting for any of them. Each is replaced, length for length so that no offset moves, by one derived from
/// everything else in the file. The XMP packet is written anew on the way, because PDFsharp puts the title into
/// that XML without escaping it and sets a date there.
/// </summary>
internal static partial class StablePdf
{
    public const string Maker = "Tautline";

    private const string PacketStart = "<?xpacket begin=";
    private const string PacketEnd = "<?xpacket end=\"w\"?>";

    /// <exception cref="InvalidOperationException">The file is not laid out as PDFsharp 6.2.4 lays it out.</exception>
    public static byte[] Settle(byte[] pdf, string title)
    {
        // Latin-1 keeps bytes and characters one to one.
        string text = Encoding.Latin1.GetString(pdf);
        Range packet = FindPacket(text);
        string[] tags = [.. SubsetTag().Matches(text).Select(m => m.Groups["tag"].Value).Distinct()];
        Match id = FileId().Match(text);
        if (!id.Success)
            throw new InvalidOperationException("No file identifier of 32 hexadecimal digits, twice, in the PDF.");

        char[] settled = text.ToCharArray();
        Fill(settled, packet, ' ');
        ReplaceIds(settled, id, new string('0', 32));
        ReplaceTags(settled, text, tags, _ => "AAAAAA");
        byte[] digest = SHA256.HashData(Encoding.Latin1.GetBytes(settled));

        ReplaceIds(settled, id, Convert.ToHexString(digest.AsSpan(0, 16)));
        ReplaceTags(settled, text, tags, i => Tag(digest, i));
        Packet(title, digest, packet.End.Value - packet.Start.Value).CopyTo(0, settled, packet.Start.Value, packet.End.Value - packet.Start.Value);
        return Encoding.Latin1.GetBytes(settled);
    }

    private static Range FindPacket(string text)
    {
        int start = text.IndexOf(PacketStart, StringComparison.Ordinal);
        int end = text.LastIndexOf(PacketEnd, StringComparison.Ordinal);
        return start >= 0 && end > start
            ? start..(end + PacketEnd.Length)
            : throw new InvalidOperationException("No XMP packet in the PDF.");
    }

    private static void Fill(char[] text, Range range, char with) => text.AsSpan(range).Fill(with);

    private static void ReplaceIds(char[] text, Match id, string with)
    {
        with.CopyTo(0, text, id.Groups["first"].Index, 32);
        with.CopyTo(0, text, id.Groups["second"].Index, 32);
    }

    private static void ReplaceTags(char[] text, string before, string[] tags, Func<int, string> with)
    {
        foreach (Match match in SubsetTag().Matches(before))
        {
            Group tag = match.Groups["tag"];
            with(Array.IndexOf(tags, tag.Value)).CopyTo(0, text, tag.Index, tag.Length);
        }
    }

    // Five letters from the digest and one for the font's turn, so that no two fonts of a file share a tag.
    private static string Tag(byte[] digest, int turn) =>
        string.Concat(digest.AsSpan(16, 5).ToArray().Select(b => (char)('A' + (b % 26)))) + (char)('A' + (turn % 26));

    private static string Packet(string title, byte[] digest, int length)
    {
        string packet = PacketOf(TitleElement(title), digest);
        if (packet.Length > length)
            packet = PacketOf("", digest);
        if (packet.Length > length)
            throw new InvalidOperationException($"The XMP packet needs {packet.Length} bytes and has {length}.");
        return packet[..^PacketEnd.Length].PadRight(length - PacketEnd.Length) + PacketEnd;
    }

    private static string PacketOf(string titleElement, byte[] digest)
    {
        string id = new Guid(digest.AsSpan(0, 16), bigEndian: true).ToString("D", CultureInfo.InvariantCulture);
        string packet = $"""
            {PacketStart}"{'\uFEFF'}" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/">
            <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
             xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"
             xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/">
            {titleElement}<pdf:Producer>PDFsharp 6.2.4</pdf:Producer>
            <xmp:CreatorTool>{Maker}</xmp:CreatorTool>
            <xmpMM:DocumentID>uuid:{id}</xmpMM:DocumentID>
            <xmpMM:InstanceID>uuid:{id}</xmpMM:InstanceID>
            </rdf:Description>
            </rdf:RDF>
            </x:xmpmeta>

            """.ReplaceLineEndings("\n") + PacketEnd;
        return Encoding.Latin1.GetString(Encoding.UTF8.GetBytes(packet));
    }

    private static string TitleElement(string title) =>
        $"<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{Escaped(title)}</rdf:li></rdf:Alt></dc:title>\n";

    private static string Escaped(string text) => new StringBuilder(string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)))
        .Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;").ToString();

    [GeneratedRegex(@"/(?<tag>[A-Z]{6})\+Tautline", RegexOptions.CultureInvariant)]
    private static partial Regex SubsetTag();

    [GeneratedRegex(@"/ID\s*\[\s*<(?<first>[0-9A-Fa-f]{32})>\s*<(?<second>[0-9A-Fa-f]{32})>", RegexOptions.CultureInvariant | RegexOptions.RightToLeft)]
    private static partial Regex FileId();
}
