namespace Tautline.Formats.Csv;

/// <summary>The tables a plan is written as.</summary>
public enum CsvTable { Takeoff, Posts, Runs, Quantities }

/// <summary>How far net quantities are split by place.</summary>
public enum QuantitiesBy { Line, Run }
