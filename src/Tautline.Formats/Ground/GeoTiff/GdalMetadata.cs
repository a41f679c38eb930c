using System.Globalization;
using System.Xml;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>
/// What GDAL notes of the first band in a tag of its own, as XML: unit of the values, scale and offset. Stored statistics are not read: they may
/// be wrong.
/// </summary>
internal sealed record GdalMetadata(string? Unit, double Scale, double Offset)
{
    private static readonly XmlReaderSettings Settings = new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, MaxCharactersInDocument = 1 << 22 };

    public static GdalMetadata Of(string? xml)
    {
        var found = new GdalMetadata(null, 1, 0);
        if (xml is null) return found;
        try
        {
            using var reader = XmlReader.Create(new StringReader(xml), Settings);
            while (reader.Read())
                if (reader.NodeType == XmlNodeType.Element && reader.LocalName == "Item" && reader.GetAttribute("sample") is null or "0") found = found.With(reader);
        }
        catch (XmlException)
        {
            // Notes beside the data; what is whole of them was read.
        }
        return found;
    }

    private GdalMetadata With(XmlReader reader)
    {
        var role = reader.NodeType == XmlNodeType.Element ? reader.GetAttribute("role") : null;
        if (role is not ("unittype" or "scale" or "offset") || reader.IsEmptyElement || !reader.Read() || reader.NodeType != XmlNodeType.Text) return this;
        if (role == "unittype") return this with { Unit = reader.Value.Trim() };
        if (!double.TryParse(reader.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number)) return this;
        return role == "scale" ? this with { Scale = number } : this with { Offset = number };
    }
}
