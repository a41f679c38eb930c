using System.Collections.Immutable;
using Tautline.Formats.Coordinates;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground;

/// <summary>
/// Settles in which system and units a file's numbers are: as stated, else by the file's own word where nothing speaks against it, and never
/// by a guess. What is left open becomes a question.
/// </summary>
internal sealed class FrameSettler
{
    // Degrees written as a grid's numbers: cells of a fiftieth of a degree are 2 km wide, of a fiftieth of a metre nobody makes. Our own practice.
    private const double LargestDegreeCell = 0.02;

    private readonly GroundReading _reading;
    private readonly GroundOptions _options;
    private readonly ProblemList _problems;
    private readonly List<GroundQuestion> _questions = [];
    private readonly Lazy<Slopes?> _slopes;
    private CoordinateSystemChoice? _system;
    private LinearUnit? _planUnit;
    private LinearUnit? _heightUnit;

    private FrameSettler(GroundReading reading, GroundOptions options) =>
        (_reading, _options, _problems, _slopes) = (reading, options, new(options.SourceName), new(() => reading.Content?.Slopes));

    private GroundClaims Claims => _reading.Claims;

    public static Settled Settle(GroundReading reading, GroundOptions options)
    {
        var settler = new FrameSettler(reading, options);
        settler.SettleSystem();
        settler.SettleHeightUnit();
        settler.TellHeights();
        return new(
            settler._system, settler._planUnit, settler._heightUnit,
            [.. reading.Questions, .. settler._questions], [.. reading.Problems, .. settler._problems.ToImmutable()]);
    }

    internal sealed record Settled(
        CoordinateSystemChoice? System,
        LinearUnit? PlanUnit,
        LinearUnit? HeightUnit,
        ImmutableArray<GroundQuestion> Questions,
        ImmutableArray<ImportProblem> Problems);

    private void SettleSystem()
    {
        if (_reading.Format is null || (_reading.Content is null && _reading.Questions.IsEmpty)) return;
        if (_options.System is { LocalUnit: { } unit }) Local(unit);
        else if (_options.System is { EpsgCode: { } code }) Stated(code);
        else if (Claims.Degrees || LooksLikeDegrees()) _problems.Add(GroundFindings.Degrees(Claims.SystemText));
        else if (Claims.SystemCode is { } claimed) Claimed(claimed);
        else AskSystem();
    }

    private void Local(LinearUnit unit)
    {
        if (Claims.Degrees || LooksLikeDegrees()) _problems.Add(GroundFindings.DegreesOverruled(unit.Name()));
        if (Claims.SystemCode is { } code) _problems.Add(GroundFindings.ClaimContradicts($"EPSG:{code}", $"a local system in {unit.Name()}"));
        TellUnit(unit, $"a local system in {unit.Name()}");
        (_system, _planUnit) = (_options.System, unit);
    }

    private void Stated(int code)
    {
        if (CoordinateSystemCatalog.FindProjected(code) is not { } grid)
        {
            _problems.Add(WhyNot(code));
            return;
        }
        if (Claims.SystemCode is { } claimed && claimed != code) _problems.Add(GroundFindings.ClaimContradicts($"EPSG:{claimed}", $"EPSG:{code}"));
        TellUnit(grid.Unit, $"EPSG:{code}");
        if (PlacementOn(grid) is { IsNear: false } far)
            _problems.Add(GroundFindings.OutsideArea(far.SystemName, far.Where, GridPlacement.TwinThatFits(grid, Bounds())));
        (_system, _planUnit) = (_options.System, grid.Unit);
    }

    private void TellUnit(LinearUnit used, string stated)
    {
        if (Claims.PlanUnit is { } unit && unit != used) _problems.Add(GroundFindings.UnitContradicts(unit.Name(), stated, used.Name()));
    }

    private static Finding WhyNot(int code)
    {
        if (CoordinateSystemCatalog.Geographic.TryGetValue(code, out var degrees)) return GroundFindings.Degrees(degrees.Name);
        return CoordinateSystemCatalog.Refused.TryGetValue(code, out var refused) ? GroundFindings.RefusedSystem(refused) : GroundFindings.UnknownSystem(code);
    }

    private void Claimed(int code)
    {
        if (CoordinateSystemCatalog.FindProjected(code) is not { } grid)
        {
            if (CoordinateSystemCatalog.Geographic.ContainsKey(code)) _problems.Add(WhyNot(code));
            else AskSystem(GroundFindings.ClaimNotKnown(code, Claims.SystemText));
            return;
        }
        var placement = PlacementOn(grid);
        if (Claims.PlanUnit is { } unit && unit != grid.Unit) AskSystem(GroundFindings.UnitAgainstCode(code, grid, unit), grid);
        else if (placement is { IsNear: false })
            AskSystem(GroundFindings.ClaimOutside(placement.SystemName, placement.Where, GridPlacement.TwinThatFits(grid, Bounds())), grid);
        else
        {
            if (placement is not null) _problems.Add(GroundFindings.SystemClaimed(placement.SystemName, placement.Where));
            (_system, _planUnit) = (CoordinateSystemChoice.Epsg(code), grid.Unit);
        }
    }

    private void AskSystem(Finding? because = null, ProjectedSystem? coded = null)
    {
        if (because is { } finding) _problems.Add(finding);
        _questions.Add(new(GroundQuestionKind.System, SystemQuestion(because), [.. SystemChoices(coded)]));
    }

    private string SystemQuestion(Finding? because) =>
        (because is null ? "The file does not say what system its plan coordinates are in." : "The system of the plan coordinates is in doubt.")
        + (Extent() is { IsEmpty: false } extent ? $" They run from {extent}." : "")
        + " State an EPSG number, or that they are the site's own local metres or feet.";

    private IEnumerable<GroundChoice> SystemChoices(ProjectedSystem? coded)
    {
        if (coded is not null)
            foreach (var grid in CoordinateSystemCatalog.Projected.Values.Where(coded.IsTwinOf).OrderBy(g => g.EpsgCode).Prepend(coded))
                yield return new(GroundAnswers.OfSystem(grid.EpsgCode), $"EPSG:{grid.EpsgCode}, {grid.Name}, in {grid.Unit.Name()}");
        foreach (var unit in Enum.GetValues<LinearUnit>())
            yield return new(GroundAnswers.OfLocal(unit), $"the site's own local grid, in {unit.Name()}", coded is null && unit == Claims.PlanUnit);
    }

    private void SettleHeightUnit()
    {
        if (_reading.Format is null || (_reading.Content is null && _reading.Questions.IsEmpty)) return;
        if (_options.HeightUnit is { } stated)
        {
            if (Claims.HeightUnit is { } claimed && claimed != stated) _problems.Add(GroundFindings.HeightUnitContradicts(claimed.Name(), stated.Name()));
            _heightUnit = stated;
        }
        else if (Claims.HeightUnit is { } unit)
        {
            _problems.Add(GroundFindings.HeightUnitClaimed(unit.Name()));
            _heightUnit = unit;
        }
        else AskHeightUnit();
    }

    private void AskHeightUnit()
    {
        var (lowest, highest) = _reading.Content?.Heights ?? (double.NaN, double.NaN);
        var choices = Enum.GetValues<LinearUnit>().Select(u => new GroundChoice(GroundAnswers.OfUnit(u), GroundFindings.UnitChoice(u, SteepShare(u))));
        _questions.Add(new(GroundQuestionKind.HeightUnit, GroundFindings.HeightUnitQuestion(lowest, highest), [.. choices]));
    }

    private double? SteepShare(LinearUnit heights) => _planUnit is { } plan && _slopes.Value is { IsEmpty: false } slopes
        ? slopes.SteeperThan(1, SteepGround.Factor(plan, heights))
        : null;

    private void TellHeights()
    {
        if (_heightUnit is not { } unit || _reading.Content is not { } content) return;
        var (lowest, highest) = (unit.ToMetres(content.Heights.Lowest), unit.ToMetres(content.Heights.Highest));
        if (lowest < SteepGround.LowestSite || highest > SteepGround.HighestSite) _problems.Add(GroundFindings.HeightsImplausible(lowest, highest));
        if (_planUnit is { } plan && _slopes.Value is { } slopes) SteepGround.Tell(slopes, plan, unit, _problems);
    }

    private bool LooksLikeDegrees() => _reading.Content is GridContent grid && grid.CellEast < LargestDegreeCell && grid.CellNorth < LargestDegreeCell
        && grid.Extent is { West: >= -181, East: <= 361, South: >= -91, North: <= 91 };

    private GroundExtent Extent() => _reading.Content?.Extent ?? GroundExtent.Nothing;

    private PlanBounds Bounds()
    {
        var extent = Extent();
        return new(extent.West, extent.South, extent.East, extent.North);
    }

    private GridPlacement? PlacementOn(ProjectedSystem grid) => Extent().IsEmpty ? null : GridPlacement.Of(grid, Bounds());
}
