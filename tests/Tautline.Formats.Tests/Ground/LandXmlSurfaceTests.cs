using System.Text;
using Tautline.Engine.Site.Ground;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Import;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

public sealed class LandXmlSurfaceTests
{
    private const string Subdivision = "plans/subdivision-1.1-feet.xml";

    private const string Points = "<P id=\"1\">0 0 10</P><P id=\"2\">0 30 20</P><P id=\"7\">40 0 10</P><P id=\"9\">40 30 20</P>";
    private const string Faces = "<F>1 2 7</F><F>2 9 7</F>";
    private const string Meter = "<Units><Metric linearUnit=\"meter\" areaUnit=\"squareMeter\"/></Units>";

    [Fact]
    public void TheLotSurveyHasTheExportersSumsToTheLastDigitsOfItsRounding()
    {
        var file = Shared(Lot, new() { System = LocalMetres });
        var tin = file.Faces();

        Assert.True(file.IsReady);
        Assert.Equal((224, 361, 69), (tin.Points.Length, tin.Faces.Length / 3, tin.InvisibleFaces));
        // The same sums of the file's own decimals in 50-digit arithmetic; doubles near 5,000 are 1e-12 apart.
        Assert.Equal(1471.43928663317743, tin.PlanArea, 1e-11);
        Assert.Equal(1567.21691478027340, tin.SlopeArea, 1e-11);
        // README: area2DSurf and area3DSurf of the exporter, reproduced only without the faces that are not seen. The first to all digits; the second
        // to 3 in the sixteenth, where the exporter's own sum is off the exact one by rounding.
        Assert.Equal(1471.43928663317, tin.PlanArea, 5e-12);
        Assert.Equal(1567.216914780276, tin.SlopeArea, 3e-12);
        Assert.Equal((1.430, 7.290), tin.Heights);
        // README: the extent of all points; the southernmost belongs to faces that are not seen.
        Assert.Equal((4962.770, 5006.218), (tin.Points.Min(p => p.North), tin.Points.Max(p => p.North)));
        Assert.Equal((4953.727, 5030.928), (tin.Points.Min(p => p.East), tin.Points.Max(p => p.East)));
        Assert.Equal(4962.814, tin.Extent.South);
        Assert.Equal("The file says heights 0 to 7.29; the faces use 1.43 to 7.29.", file.Problem("HeightsDiffer").Message);
        Assert.DoesNotContain("AreaDiffers", file.Codes());
    }

    [Fact]
    public void TheLotSurveysLinesArePlanShapesOnly()
    {
        var tin = Shared(Lot).Faces();

        Assert.Equal((16, 4), (tin.Breaklines.Length, tin.Boundaries.Length));
        Assert.Equal(["outer", "void", "void", "void"], tin.Boundaries.Select(b => b.Kind));
        Assert.All(tin.Breaklines.Concat(tin.Boundaries).SelectMany(l => l.Points), p => Assert.True(double.IsNaN(p.Height)));
        Assert.Equal(new FilePoint(5013.261, 4992.97, double.NaN), tin.Boundaries[1].Points[0]);
        Assert.Equal("GRAVEL ROAD", tin.Breaklines[0].Name);
    }

    [Theory]
    [InlineData(4970, 4970, 4.340058)]
    [InlineData(4975, 5015, 4.458582)]
    [InlineData(4990, 5018, 4.261013)]
    [InlineData(4977, 5003, null)]
    [InlineData(4990, 5004, null)]
    public void TheLotSurveyHasTheReadmesHeightsAndNoneInItsVoids(double north, double east, double? height)
    {
        var placed = GroundPlacement.Place(Shared(Lot, new() { System = LocalMetres }), GroundTarget.Local);
        var found = placed.Surface!.HeightAt(east, north);

        Assert.Equal(["Placed"], placed.Codes());
        Assert.Equal(height is null, found is null);
        if (height is { } expected) Assert.Equal(expected, found!.Value, 5e-7);
    }

    [Fact]
    public void TheLotSurveyLeavesItsSystemOpenAndSaysItsUnits()
    {
        var file = Shared(Lot);

        Assert.Equal(GroundQuestionKind.System, Assert.Single(file.Questions).Kind);
        Assert.Equal("local:metre", Assert.Single(file.Questions[0].Choices, c => c.Proposed).Value);
        Assert.Equal(LinearUnit.Metre, file.HeightUnit);
        Assert.Contains("HeightUnitTaken", file.Codes());
    }

    [Fact]
    public void OfSeveralSurfacesOneIsChosenByName()
    {
        var asked = Shared(Subdivision);
        Assert.Null(asked.Content);
        Assert.Contains("EG", asked.Question(GroundQuestionKind.Surface).Choices.Select(c => c.Value));
        Assert.Contains("FG", asked.Question(GroundQuestionKind.Surface).Choices.Select(c => c.Value));

        var chosen = Shared(Subdivision, GroundAnswers.Apply(new() { System = LocalFeet }, GroundQuestionKind.Surface, "EG")!);

        // README of the folder: 713 points, 1,284 faces; the exporter's area 9742293.9521 and three heights of an independent reading, in feet.
        var tin = chosen.Faces();
        Assert.Equal((713, 1284, "EG"), (tin.Points.Length, tin.Faces.Length / 3, tin.Name));
        Assert.Equal(9742293.9521, tin.PlanArea, 2e-4);
        var ground = GroundPlacement.Place(chosen, GroundTarget.Local).Surface!;
        Assert.Equal(246.667871, ground.HeightAt(0, 1500 * 0.3048)!.Value / 0.3048, 5e-7);
        Assert.Equal(257.304640, ground.HeightAt(640.25 * 0.3048, 1800.5 * 0.3048)!.Value / 0.3048, 5e-7);
        Assert.Contains("FootTaken", chosen.Codes());
    }

    [Fact]
    public void AnUnknownOrDoubtfulSurfaceNameIsTold()
    {
        var text = Document(Meter, Surface("A", Points, Faces) + Surface("A", Points, Faces));

        Assert.Equal("There is no surface 'B'. The file has: A, A.", Read(text, Metres with { Surface = "B" }).Problem("SurfaceNotFound").Message);
        Assert.Equal("2 surfaces are named 'A'.", Read(text, Metres with { Surface = "A" }).Problem("SurfaceNotFound").Message);
        Assert.Equal(["#1", "#2"], Read(text).Question(GroundQuestionKind.Surface).Choices.Select(c => c.Value));
        Assert.True(Read(text, Metres with { Surface = "#2" }).IsReady);
    }

    [Fact]
    public void NorthComesFirstAndIdsMaySkip()
    {
        var ground = GroundPlacement.Place(Read(Document(Meter, Surface("A", Points, Faces))), GroundTarget.Local).Surface!;

        Assert.Equal(15, ground.HeightAt(15, 39)!.Value, 1e-12); // rises 10 over 30 east
        Assert.Null(ground.HeightAt(39, 15));
    }

    [Theory]
    [InlineData("xmlns:x=\"http://www.landxml.org/schema/LandXML-1.0\"", "x:")]
    [InlineData("", "")]
    public void TheNamespaceDoesNotMatter(string declaration, string prefix)
    {
        var text = Document("", Surface("A", Points, Faces)).Replace("<", $"<{prefix}").Replace($"<{prefix}/", $"</{prefix}").Replace($"<{prefix}LandXML", $"<{prefix}LandXML {declaration}");

        Assert.Equal(6, Read(text).Faces().Faces.Length);
    }

    [Fact]
    public void FacesThatAreNotSeenAreLeftOut()
    {
        var file = Read(Document(Meter, Surface("A", Points, "<F>1 2 7</F><F i=\"1\">2 9 7</F>", "area2DSurf=\"600\"")));

        Assert.Equal((3, 1), (file.Faces().Faces.Length, file.Faces().InvisibleFaces));
        Assert.DoesNotContain("AreaDiffers", file.Codes());
        var wrong = Read(Document(Meter, Surface("A", Points, Faces, "area2DSurf=\"600\"")));
        Assert.Equal("The file says the surface's plan area is 600; its faces make 1200.", wrong.Problem("AreaDiffers").Message);
    }

    [Fact]
    public void FacesWithoutTheirPointAreToldWithTheirLines()
    {
        var file = Read(Document(Meter, Surface("A", Points, "<F>1 2 7</F>\n<F>2 9 70</F>\n<F>1 2</F>")));

        Assert.Equal(["FaceWithoutPoint 2 A face names point 70, which is not there. The face is left out: the ground has a hole.", "BadFace 3 A face does not name three points but 2. It is left out."],
            file.Problems.Where(p => p.Severity == ProblemSeverity.Warning).OrderBy(p => p.Where.Line).Select(p => $"{p.Code} {p.Where.Line} {p.Message}"));
        Assert.True(file.IsReady);
    }

    [Fact]
    public void PointsThatCannotBeNamedOrReadAreTold()
    {
        var file = Read(Document(Meter, Surface("A", Points + "<P>1 1 1</P><P id=\"20\">1 1</P><P id=\"21\">1 1 x</P><P id=\"22\" pntRef=\"4\"/>", Faces)));

        Assert.Equal(
            ["A point has no whole number as its id, so no face can name it. It is left out.", "Point 20 is not north, east and height as three numbers. It is left out.",
                "Point 21 is not north, east and height as three numbers. It is left out.", "Point 22 refers to a point elsewhere, which is not read. It is left out."],
            file.Problems.Where(p => p.Code == "BadPoint").Select(p => p.Message));
        Assert.True(file.IsReady);
    }

    [Fact]
    public void AnIdForTwoPlacesIsRefused()
    {
        Assert.Equal(ProblemSeverity.Error, Read(Document(Meter, Surface("A", Points + "<P id=\"2\">0 31 20</P>", Faces))).Problem("IdTwice").Severity);
        Assert.True(Read(Document(Meter, Surface("A", Points + "<P id=\"2\">0 30 20</P>", Faces))).IsReady);
    }

    [Fact]
    public void ASurfaceWithVoidsButAllFacesSeenIsCutAlongThem()
    {
        var source = "<SourceData><Boundaries><Boundary bndType=\"void\"><PntList2D>10 10 10 20 20 20 20 10</PntList2D></Boundary></Boundaries></SourceData>";
        var placed = GroundPlacement.Place(Read(Document(Meter, Surface("A", Points, Faces).Replace("<Definition", source + "<Definition"))), GroundTarget.Local);

        Assert.Null(placed.Surface!.HeightAt(15, 15));
        Assert.Equal(12, placed.Surface.HeightAt(6, 15)!.Value, 1e-12);
        Assert.Equal("The surface has 1 boundary but no face marked as not seen. The ground is cut along them.", placed.Problem("Trimmed").Message);
    }

    [Theory]
    [InlineData("<Metric linearUnit=\"meter\"/>", LinearUnit.Metre, LinearUnit.Metre)]
    [InlineData("<Imperial linearUnit=\"USSurveyFoot\" elevationUnit=\"foot\"/>", LinearUnit.SurveyFoot, LinearUnit.Foot)]
    [InlineData("<Imperial linearUnit=\"foot\" elevationUnit=\"meter\"/>", LinearUnit.Foot, LinearUnit.Metre)]
    public void UnitsOfPlanAndHeightAreApart(string units, LinearUnit plan, LinearUnit height)
    {
        var file = Read(Document($"<Units>{units}</Units>", Surface("A", Points, Faces)), new GroundOptions { System = CoordinateSystemChoice.Local(plan) });

        Assert.True(file.IsReady);
        Assert.Equal((plan, height), (file.Claims.PlanUnit, file.HeightUnit));
    }

    [Fact]
    public void AnUnknownUnitIsToldAndAsked()
    {
        var file = Read(Document("<Units><Metric linearUnit=\"millimeter\"/></Units>", Surface("A", Points, Faces)), new GroundOptions());

        Assert.Equal("The file's linearUnit is 'millimeter', which is none of metre, foot, US survey foot.", file.Problem("UnitNotKnown").Message);
        Assert.Equal([GroundQuestionKind.System, GroundQuestionKind.HeightUnit], file.Questions.Select(q => q.Kind));
    }

    [Fact]
    public void AClaimedSystemThatPutsTheGroundElsewhereIsAsked()
    {
        var file = Read(Document(Meter + "<CoordinateSystem epsgCode=\"32119\" name=\"NC\"/>", Surface("A", Points, Faces)), new GroundOptions());

        Assert.Equal(32119, file.Claims.SystemCode);
        Assert.Contains("outside the area of that grid", file.Problem("ClaimOutside").Message);
        Assert.Equal(GroundQuestionKind.System, Assert.Single(file.Questions).Kind);
    }

    [Theory]
    [InlineData("<LandXML><Surfaces/></LandXML>", "NoSurface")]
    [InlineData("<gpx/>", "NotLandXml")]
    [InlineData("<LandXML><Surfaces><Surface name=\"A\"><Definition surfType=\"grid\"/></Surface></Surfaces></LandXML>", "NotTin")]
    [InlineData("<LandXML><Surfaces><Surface name=\"A\"><Definition surfType=\"TIN\"/></Surface></Surfaces></LandXML>", "NoFaces")]
    [InlineData("<LandXML><Surfaces><Surface name=\"A\">", "NotXml")]
    [InlineData("<!DOCTYPE a [<!ENTITY x \"y\">]><LandXML>&x;</LandXML>", "NotXml")]
    public void WhatIsNoSurfaceIsRefusedByName(string text, string code) => Assert.Equal(ProblemSeverity.Error, Read(text).Problem(code).Severity);

    [Fact]
    public void ADocumentTypeIsNotRead() =>
        Assert.Contains("document type declaration", Read("<?xml version=\"1.0\"?><!DOCTYPE LandXML SYSTEM \"http://127.0.0.1/x.dtd\"><LandXML/>").Problem("NotXml").Message);

    [Fact]
    public void DepthTagsAndPointsHaveLimits()
    {
        var deep = "<LandXML>" + string.Concat(Enumerable.Repeat("<a>", 5000));
        Assert.Contains("TooDeep", Read(deep).Codes());
        var inSurface = "<LandXML><Surface>" + string.Concat(Enumerable.Repeat("<a>", 5000));
        Assert.Contains("TooDeep", Read(inSurface).Codes());
        Assert.Contains("A tag is longer", Read($"<LandXML a=\"{new string('x', 2_000_000)}\"/>").Problem("NotXml").Message);
        Assert.Contains("TooManyPoints", Read(Document("", Surface("A", Points, Faces)), Metres with { Limits = new() { Points = 3 } }).Codes());
    }

    [Fact]
    public void OtherEncodingsAreReadAsDeclared()
    {
        var text = Document(Meter, Surface("Böschung", Points, Faces));
        Assert.Equal("Böschung", GroundReader.Read(Encoding.Latin1.GetBytes("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>" + text), Metres).Faces().Name);
        Assert.Equal("Böschung", GroundReader.Read((byte[])[.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)], Metres).Faces().Name);
    }

    private static string Document(string head, string surfaces) => $"<LandXML>{head}<Surfaces>{surfaces}</Surfaces></LandXML>";

    private static string Surface(string name, string points, string faces, string figures = "") =>
        $"<Surface name=\"{name}\"><Definition surfType=\"TIN\" {figures}><Pnts>{points}</Pnts><Faces>{faces}</Faces></Definition></Surface>";
}
