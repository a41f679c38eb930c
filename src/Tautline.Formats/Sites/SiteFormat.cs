namespace Tautline.Formats.Sites;

/// <summary>The kinds of file a site's shapes come in.</summary>
public enum SiteFormat
{
    /// <summary>Drawing exchange file, ASCII, R12 to 2018.</summary>
    Dxf,

    /// <summary>LandXML 1.0 to 2.0: points, parcels, alignments, plan features.</summary>
    LandXml,

    /// <summary>KML 2.0 to 2.3.</summary>
    Kml,

    /// <summary>KML in a ZIP.</summary>
    Kmz,

    /// <summary>GPX 1.0 and 1.1.</summary>
    Gpx,

    /// <summary>OpenStreetMap XML, API 0.6.</summary>
    Osm,

    /// <summary>Esri shapefile, with its side files where they are given.</summary>
    Shapefile,

    /// <summary>GeoJSON.</summary>
    GeoJson,

    /// <summary>OGC GeoPackage, an SQLite database.</summary>
    GeoPackage,

    /// <summary>Coordinates as text: survey points, or positions pasted from anywhere.</summary>
    Text,
}
