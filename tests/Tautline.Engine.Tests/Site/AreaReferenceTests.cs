using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Surveys;

/// <summary>Surveying exam-preparation reference, page on area.</summary>
public sealed class AreaReferenceTests
{
    /// <summary>SV-12. Whole coordinates; the perimeter is printed to 0.1: tolerance 0.05.</summary>
    [Fact]
    public void AreaAndPerimeterOfAQuadrilateral()
    {
        var loop = Field.Through(Field.NorthEast(60, 60), Field.NorthEast(70, 280), Field.NorthEast(220, 290), Field.NorthEast(200, 50));
        Assert.Equal(33_350.0, loop.Area!.Value.SquareFeet, 0.05);
        Assert.Equal(751.7, loop.Perimeter.Feet, 0.05);
    }
}
