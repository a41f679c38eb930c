using System.Collections.Immutable;
using System.Globalization;
using Tautline.Formats.Ground.Reading;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>Reads survey points from text: any of the trade's column orders and separators, print-outs of total stations among them.</summary>
internal sealed class SurveyPointReader
{
    private const int OfAKind = 20;

    private readonly GroundOptions _options;
    private readonly ProblemList _problems;
    private readonly List<GroundQuestion> _questions = [];

    private SurveyPointReader(GroundOptions options) => (_options, _problems) = (options, new(options.SourceName, null, OfAKind));

    public static GroundReading Read(ByteSource source, GroundOptions options)
    {
        var reader = new SurveyPointReader(options);
        var content = reader.Content(source);
        return new()
        {
            Format = GroundFormat.SurveyPoints,
            Content = content,
            Questions = [.. reader._questions],
            Problems = reader._problems.ToImmutable(),
        };
    }

    private PointContent? Content(ByteSource source)
    {
        if (SurveyText.Lines(source, _problems) is not { } lines || SurveyLayout.Find(lines, _options.Points, _problems) is not { } layout) return null;
        var order = layout.Stated ?? layout.Proposals[0];
        if (layout.Stated is null) AskColumns(lines, layout);
        else if (_options.Points.Columns is null) _problems.AddAtLine(PointFindings.HeaderTaken(order), layout.Header!.Line + 1);
        var points = new SurveyRowList(layout, order, _problems).Read(lines);
        if (points.Count == 0 && !_problems.HasErrors) _problems.Add(PointFindings.NoRows(order));
        points = WithoutPlaceHolders(points);
        if (!_options.Points.ZeroIsAHeight) points = ZeroHeights.Cleared(points, _problems);
        var missing = points.Count(p => p.Height is null);
        if (missing > 0 && order.Place(SurveyColumn.Height) >= 0) _problems.Add(PointFindings.NoHeights(missing));
        RepeatedPoints.Tell(points, _problems);
        if (layout.Stated is null || points.Count == 0) return null;
        return new() { Points = [.. points], Columns = order, Breaklines = Breaklines(points) };
    }

    private ImmutableArray<SurveyLine> Breaklines(List<SurveyPoint> points) =>
        _options.Points.Breaklines is { } codes ? new BreaklineBuilder(codes, points, _problems).Build() : [];

    private void AskColumns(ImmutableArray<string> lines, SurveyLayout layout)
    {
        var choices = new List<GroundChoice>();
        var rows = 0;
        foreach (var order in layout.Proposals.Distinct())
        {
            var row = new SurveyRow(layout, order);
            var found = lines.Select((l, i) => row.Read(l, i + 1).Point).OfType<SurveyPoint>().ToList();
            rows = Math.Max(rows, found.Count);
            if (found.Count > 0) choices.Add(new(order.Text, PointFindings.ColumnChoice(order, found[0]), choices.Count == 0));
        }
        _questions.Add(new(GroundQuestionKind.Columns, PointFindings.ColumnQuestion(PointFindings.SeparatorName(layout.Separator), rows), [.. choices]));
    }

    private List<SurveyPoint> WithoutPlaceHolders(List<SurveyPoint> points)
    {
        var crowds = points.GroupBy(p => (p.North, p.East, p.Height)).Where(g => g.Count() >= MostAtOnePlace).ToList();
        if (crowds.Count == 0) return points;
        var kept = _options.Points.PlaceHolders == PlaceHolders.Keep;
        foreach (var crowd in crowds) TellCrowd(crowd, kept);
        if (kept) return points;
        var places = crowds.Select(g => g.Key).ToHashSet();
        return points.FindAll(p => !places.Contains((p.North, p.East, p.Height)));
    }

    // Three shots that agree to the last digit are no shots. Our own practice.
    private const int MostAtOnePlace = 3;

    private void TellCrowd(IGrouping<(double North, double East, double? Height), SurveyPoint> crowd, bool kept)
    {
        var place = string.Create(CultureInfo.InvariantCulture, $"{crowd.Key.North:0.00###}, {crowd.Key.East:0.00###}, {crowd.Key.Height:0.00###}");
        _problems.AddAtLine(PointFindings.PlaceHolders(crowd.Count(), place, LineList.Of(crowd.Select(p => p.Line)), kept), crowd.First().Line);
        if (_options.Points.PlaceHolders is not null || _questions.Exists(q => q.Kind == GroundQuestionKind.PlaceHolders)) return;
        GroundChoice[] choices =
        [
            new(GroundAnswers.Of(PlaceHolders.LeaveOut), "yes, leave them out", true),
            new(GroundAnswers.Of(PlaceHolders.Keep), "no, keep them"),
        ];
        _questions.Add(new(GroundQuestionKind.PlaceHolders, PointFindings.PlaceHolderQuestion(crowd.Count(), place), [.. choices]));
    }
}
