using Tautline.Engine.Catalog;

namespace Tautline.Engine.Strength;

/// <summary>Where the figures of the strength checks come from. 'From memory' is shown as verify until somebody has the standard in hand.</summary>
internal static class StrengthSources
{
    public static Provenance Asce716 { get; } = new("ASCE 7-16", "26.10", "2016", Confidence.Published);
    public static Provenance Asce722 { get; } = new("ASCE 7-22", "26.10", "2022", Confidence.Published);
    public static Provenance Asce705 { get; } = new("ASCE 7-05", "6.5.10", "2005", Confidence.Published);
    public static Provenance Asce710 { get; } = new("ASCE 7-10", "27.3.2", "2010", Confidence.Published);
    public static Provenance KzTable { get; } = new("ASCE 7-10 and 7-16, exposure coefficient table", "26.10-1", "2016", Confidence.FromMemory);
    public static Provenance AlphaB722 { get; } = new("ASCE 7-22", "26.11-1, exposure B", "2022", Confidence.FromMemory);
    public static Provenance Elevation { get; } = new("ASCE 7-16", "26.9-1", "2016", Confidence.Published);
    public static Provenance Topography { get; } = new("ASCE 7-16", "26.8", "2016", Confidence.FromMemory);
    public static Provenance Directionality { get; } = new("ASCE 7-16", "26.6-1", "2016", Confidence.FromMemory);
    public static Provenance Gust { get; } = new("ASCE 7-16", "26.11.1, rigid structures", "2016", Confidence.Published);
    public static Provenance OpenSigns { get; } = new("ASCE 7-16", "Table 29.4-2", "2016", Confidence.Published);
    public static Provenance SolidWalls { get; } = new("ASCE 7-16", "Fig. 29.3-1", "2016", Confidence.FromMemory);
    public static Provenance LeastWind { get; } = new("ASCE 7-16", "29.7", "2016", Confidence.Published);
    public static Provenance WindCombination { get; } = new("ASCE 7-16", "2.3.1 and 2.4.1", "2016", Confidence.FromMemory);
    public static Provenance IceCombination { get; } = new("ASCE 7-16", "2.3.4 and 2.4.3", "2016", Confidence.FromMemory);
    public static Provenance Ice { get; } = new("ASCE 7-16", "10.4", "2016", Confidence.FromMemory);
    public static Provenance Eurocode { get; } = new("EN 1991-1-4", "4.2 to 4.5", "2005", Confidence.Published);
    public static Provenance EurocodeWalls { get; } = new("EN 1991-1-4", "7.4.1, Table 7.9", "2005", Confidence.FromMemory);
    public static Provenance EurocodeWallsSeen { get; } = new("EN 1991-1-4", "7.4.1, Table 7.9", "2005", Confidence.Published);
    public static Provenance EurocodeLattice { get; } = new("EN 1991-1-4", "7.11, the largest of its figure", "2005", Confidence.FromMemory);
    public static Provenance EurocodeFactor { get; } = new("EN 1990", "Table A1.2(B)", "2002", Confidence.FromMemory);
    public static Provenance Solidity { get; } = new("two families of parallel wires, counted once where they cross", "", "", Confidence.Calculated);
    public static Provenance Flexure { get; } = new("AISC 360-16", "F8", "2016", Confidence.Published);
    public static Provenance FlexureSquare { get; } = new("AISC 360-16", "F7", "2016", Confidence.FromMemory);
    public static Provenance FlexureOpen { get; } = new("AISC 360-16", "F6, its flange limits on the elastic modulus alone", "2016", Confidence.FromMemory);
    public static Provenance FlexureFactor { get; } = new("AISC 360-16", "F1", "2016", Confidence.Published);
    public static Provenance ShearFactor { get; } = new("AISC 360-16", "G1", "2016", Confidence.FromMemory);
    public static Provenance Shear { get; } = new("AISC 360-16", "G5", "2016", Confidence.FromMemory);
    public static Provenance Columns { get; } = new("AISC 360-16", "E3", "2016", Confidence.FromMemory);
    public static Provenance Rods { get; } = new("AISC 360-16", "J3.6", "2016", Confidence.FromMemory);
    public static Provenance DesignWall { get; } = new("AISC 360-16", "B4.2", "2016", Confidence.FromMemory);
    public static Provenance Steel { get; } = new("AISC 360-16", "Table of symbols", "2016", Confidence.Published);
    public static Provenance Yield { get; } = new("catalogue, least yield of the section's group", "", "", Confidence.FromMemory);
    public static Provenance PoleFormula { get; } = new("IBC", "1807.3.2", "2009 to 2024", Confidence.Published);
    public static Provenance SoilTable { get; } = new("IBC", "Table 1806.2", "2012", Confidence.Published);
    public static Provenance SoilDepth { get; } = new("IBC", "1806.3.3", "2012", Confidence.FromMemory);
    public static Provenance IsolatedPole { get; } = new("IBC", "1806.3.4", "2012", Confidence.Published);
    public static Provenance GatePosts { get; } = new("ASTM F900-11", "post table", "2011", Confidence.FromMemory);
    public static Provenance Statics { get; } = new("statics", "", "", Confidence.Calculated);
    public static Provenance Expansion { get; } = new("handbook value for steel", "", "", Confidence.Published);
    public static Provenance Practice { get; } = new("common practice, no source", "", "", Confidence.CommonPractice);
}
