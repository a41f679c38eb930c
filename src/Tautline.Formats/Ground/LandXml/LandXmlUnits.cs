using System.Globalization;
using System.Xml;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.LandXml;

/// <summary>What a LandXML file says of its units and system.</summary>
internal sealed class LandXmlUnits(ProblemList problems)
{
    public GroundClaims Claims { get; private set; } = GroundClaims.None;

    /// <summary>Whether stated areas are in the square of the linear unit.</summary>
    public bool AreasMatch { get; private set; }

    /// <summary>Reads the element Metric or Imperial.</summary>
    public void ReadUnits(XmlReader reader) => ReadUnits(reader.GetAttribute);

    /// <summary>The same from the element's attributes.</summary>
    public void ReadUnits(Func<string, string?> attribute)
    {
        var (linear, heights, area) = (attribute("linearUnit") ?? "", attribute("elevationUnit"), attribute("areaUnit"));
        var plan = Unit("linearUnit", linear);
        var height = heights is null ? plan : Unit("elevationUnit", heights);
        if (plan == LinearUnit.Foot) problems.Add(LandXmlFindings.FootTaken);
        if (heights is null && plan is { } unit) problems.Add(LandXmlFindings.HeightUnitTaken(unit.Name()));
        AreasMatch = (plan, area) is (LinearUnit.Metre, "squareMeter") or (LinearUnit.Foot, "squareFoot");
        Claims = Claims with { PlanUnit = plan, HeightUnit = height };
    }

    /// <summary>Reads the element CoordinateSystem.</summary>
    public void ReadSystem(XmlReader reader) => ReadSystem(reader.GetAttribute);

    /// <summary>The same from the element's attributes.</summary>
    public void ReadSystem(Func<string, string?> attribute)
    {
        var code = attribute("epsgCode");
        Claims = Claims with
        {
            SystemCode = int.TryParse(code, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0 ? number : null,
            SystemText = Text(attribute("name")) ?? Text(attribute("desc")) ?? Text(attribute("horizontalDatum")),
            HeightSystemText = Text(attribute("verticalDatum")),
        };
    }

    private static string? Text(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private LinearUnit? Unit(string attribute, string name)
    {
        switch (name.Trim().ToUpperInvariant())
        {
            case "METER" or "METRE" or "METERS" or "METRES": return LinearUnit.Metre;
            case "FOOT" or "FEET" or "INTERNATIONALFOOT": return LinearUnit.Foot;
            case "USSURVEYFOOT": return LinearUnit.SurveyFoot;
        }
        problems.Add(LandXmlFindings.UnitNotKnown(attribute, name));
        return null;
    }
}
