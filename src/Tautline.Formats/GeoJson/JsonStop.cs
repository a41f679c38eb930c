using Tautline.Formats.Import;

namespace Tautline.Formats.GeoJson;

/// <summary>Ends the reading of a text that is not whole JSON. Never leaves the reader.</summary>
internal sealed class JsonStop(Finding finding, int offset) : Exception(finding.Message)
{
    public Finding Finding { get; } = finding;
    public int Offset { get; } = offset;
}
