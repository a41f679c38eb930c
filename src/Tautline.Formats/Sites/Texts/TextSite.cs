using System.Collections.Immutable;
using Tautline.Formats.Ground;
using Tautline.Formats.Ground.Points;
using Tautline.Formats.Ground.Reading;
using Tautline.Formats.Sites.Reading;
using Tautline.Formats.Sites.Xml;

namespace Tautline.Formats.Sites.Texts;

/// <summary>Coordinates as text: well-known text, latitudes and longitudes with their letters, or the columns of a survey.</summary>
internal static class TextSite
{
    public static SiteFile Read(ReadOnlyMemory<byte> bytes, SiteCollector found)
    {
        if (SurveyText.Lines(ByteSource.Of(bytes), found.Problems) is not { } lines) return found.File(SiteFormat.Text);
        if (WktShapes.Read(lines, found)) found.FormatName = "well-known text";
        else if (LatLonText.Read(lines, found))
        {
            found.FormatName = "latitudes and longitudes as text";
            found.Claims = Degrees.Claims;
        }
        else return Survey(bytes, found);
        return found.File(SiteFormat.Text);
    }

    private static SiteFile Survey(ReadOnlyMemory<byte> bytes, SiteCollector found)
    {
        found.FormatName = "survey points as text";
        var reading = SurveyPointReader.Read(ByteSource.Of(bytes), new() { SourceName = found.Options.SourceName, Points = found.Options.Points });
        if (reading.Content is PointContent content) Add(content, found);
        ImmutableArray<SiteQuestion> questions =
            [.. reading.Questions.Select(q => new SiteQuestion(q.Kind == GroundQuestionKind.Columns ? SiteQuestionKind.Columns : SiteQuestionKind.PlaceHolders, q.Text, q.Choices))];
        var file = found.File(SiteFormat.Text, questions);
        // While a question is open, that nothing was found says nothing.
        var open = reading.Problems.Any(p => p.Severity == Import.ProblemSeverity.Error) || !questions.IsEmpty;
        return file with { Problems = [.. reading.Problems, .. file.Problems.Where(p => p.Code != "NothingFound" || !open)] };
    }

    private static void Add(PointContent content, SiteCollector found)
    {
        foreach (var point in content.Points)
            found.Point(new()
            {
                Number = found.NextNumber(),
                Kind = "point",
                Layer = found.Shared(point.Description),
                Label = point.Name,
                Line = point.Line,
                Vertices = [new(point.East, point.North, point.Height ?? double.NaN)],
            });
        foreach (var line in content.Breaklines)
            found.Line(
                new() { Number = found.NextNumber(), Kind = "coded line", Layer = found.Shared(line.Code), Label = line.Code, Vertices = [], Line = content.Points[line.Points[0]].Line },
                [.. line.Points.Select(i => new SiteVertex(content.Points[i].East, content.Points[i].North, content.Points[i].Height ?? double.NaN))]);
    }
}
