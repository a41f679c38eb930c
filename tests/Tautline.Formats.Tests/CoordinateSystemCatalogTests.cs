using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Tests;

public sealed class CoordinateSystemCatalogTests
{
    [Fact]
    public void EveryGridHasASourceAndAnAreaAroundItsMeridian()
    {
        foreach (var grid in CoordinateSystemCatalog.Projected.Values)
        {
            Assert.Contains("EPSG", grid.Source);
            Assert.InRange(grid.CentralMeridian, grid.Extent.West - 1, grid.Extent.East + 1);
            Assert.True(grid.Extent.South < grid.Extent.North);
        }
    }

    [Fact]
    public void UtmIsKnownByRuleForBothDatums()
    {
        Assert.Equal("WGS 84 / UTM zone 32N", CoordinateSystemCatalog.FindProjected(32632)!.Name);
        Assert.Equal("WGS 84 / UTM zone 56S", CoordinateSystemCatalog.FindProjected(32756)!.Name);
        Assert.Equal("NAD83 / UTM zone 10N", CoordinateSystemCatalog.FindProjected(26910)!.Name);
        Assert.Null(CoordinateSystemCatalog.FindProjected(32661));
        Assert.Null(CoordinateSystemCatalog.FindProjected(26924));
    }

    [Fact]
    public void WebMapMetresAreKnownOnlyToBeRefused()
    {
        Assert.Null(CoordinateSystemCatalog.FindProjected(3857));
        Assert.Contains("stretched", CoordinateSystemCatalog.Refused[3857].Reason);
        Assert.DoesNotContain(KnownSystems.All, s => s.EpsgCode == 3857);
    }

    [Fact]
    public void TheTwoOregonGridsAreTwinsInDifferentUnits()
    {
        var metres = CoordinateSystemCatalog.FindProjected(2991)!;
        var feet = CoordinateSystemCatalog.FindProjected(2992)!;

        Assert.True(metres.IsTwinOf(feet));
        Assert.Equal(LinearUnit.Foot, feet.Unit);
        Assert.Equal(400_000, feet.Unit.ToMetres(feet.FalseEasting), 1e-3);
    }

    [Fact]
    public void TheSurveyFootIsTwoPartsInAMillionLonger()
    {
        // SV-36: at 2 000 000 ft the two feet are 4 ft apart, at 6 000 000 ft 12 ft.
        Assert.Equal(4, LinearUnit.Foot.FromMetres(LinearUnit.SurveyFoot.ToMetres(2_000_000)) - 2_000_000, 0.01);
        Assert.Equal(12, LinearUnit.Foot.FromMetres(LinearUnit.SurveyFoot.ToMetres(6_000_000)) - 6_000_000, 0.01);
    }
}
