using System.Collections.Immutable;

namespace Tautline.Formats.Sites;

/// <summary>One point or one line of a file, in the file's own coordinates. A line's arcs are real arcs.</summary>
public sealed record SiteFeature
{
    /// <summary>No tags.</summary>
    public static readonly ImmutableSortedDictionary<string, string> NoTags = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>Which thing of the file it is of, counted from 1; the parts of one thing share it.</summary>
    public required int Number { get; init; }

    /// <summary>Which part of that thing, from 1.</summary>
    public int Part { get; init; } = 1;

    /// <summary>What the file calls such a thing: "LWPOLYLINE", "Parcel", "trkseg", "way"...</summary>
    public required string Kind { get; init; }

    /// <summary>The layer, folder or class it lies on; empty where the format has none.</summary>
    public string Layer { get; init; } = "";

    /// <summary>Its name, or the text of a label; may be empty.</summary>
    public string Label { get; init; } = "";

    /// <summary>The outermost block of a drawing it came with; empty for what was drawn by itself.</summary>
    public string Block { get; init; } = "";

    /// <summary>True for a point (one vertex), false for a line (two and more).</summary>
    public bool IsPoint { get; init; }

    /// <summary>True where the last vertex joins the first, which is then not repeated.</summary>
    public bool Closed { get; init; }

    /// <summary>In the order of the file; no two neighbours at one place.</summary>
    public required ImmutableArray<SiteVertex> Vertices { get; init; }

    /// <summary>What else the file says of it, as text.</summary>
    public ImmutableSortedDictionary<string, string> Tags { get; init; } = NoTags;

    /// <summary>How an alignment is stationed; null for everything else.</summary>
    public Stationing? Stations { get; init; }

    /// <summary>Line of the text it begins at, from 1; null where the format has no lines.</summary>
    public int? Line { get; init; }

    /// <summary>Length in plan in the file's unit, arcs along the arc, with the closing step when closed. Means nothing in degrees.</summary>
    public double Length() => SiteGeometry.Length(Vertices.AsSpan(), Closed);

    /// <summary>Area inside a closed line in the file's unit squared, below zero where it runs clockwise; 0 for anything else.</summary>
    public double Area() => Closed ? SiteGeometry.Area(Vertices.AsSpan()) : 0;
}
