using System.Text.Json;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Catalog;

/// <summary>A rule set: every limit the calculation asks for, each with its source. Immutable.</summary>
public sealed class Rules
{
    private readonly Dictionary<string, Limit> limits;

    private Rules(string name, string title, Dictionary<string, Limit> limits, Ladder augers)
    {
        (Name, Title, this.limits, Augers) = (name, title, limits, augers);
        BayMax = this["bay.max"];
        BayTolerance = this["bay.tolerance"];
        BayMin = this["bay.min"];
        RunMax = this["run.max"];
        TerminalTurn = this["terminal.turn"];
        TerminalGradeChange = this["terminal.gradeChange"];
        HoleTimesPost = this["hole.timesPost"];
        HoleTimesLargePost = this["hole.timesLargePost"];
        HoleLargePost = this["hole.largePost"];
        HoleDepth = this["hole.depth"];
        HoleDepthPerHeight = this["hole.depthPerHeight"];
        HoleDepthFrom = this["hole.depthFrom"];
        PostTerminalAbove = this["post.terminalAbove"];
        PostLineBelow = this["post.lineBelow"];
        PostOrderStep = this["post.orderStep"];
        BagYield = this["bag.yield"];
        RailStick = this["rail.stick"];
        WireCoil = this["wire.coil"];
        WireWrap = this["wire.wrap"];
        BarOffFace = this["bar.offFace"];
        BarShorter = this["bar.shorter"];
        BandEndDistance = this["band.endDistance"];
        BandMax = this["band.max"];
        TiePostMax = this["tie.postMax"];
        TieRailMax = this["tie.railMax"];
        RingMax = this["ring.max"];
        RollLength = this["roll.length"];
        RollTail = this["roll.tail"];
        BraceHeight = this["brace.height"];
        GateSingleDeduct = this["gate.singleDeduct"];
        GateDoubleDeduct = this["gate.doubleDeduct"];
        MeshAdvanceHigh = this["mesh.advanceHigh"];
    }

    public string Name { get; }

    public string Title { get; }

    public Limit BayMax { get; }
    public Limit BayTolerance { get; }
    public Limit BayMin { get; }
    public Limit RunMax { get; }
    public Limit TerminalTurn { get; }
    public Limit TerminalGradeChange { get; }
    public Limit HoleTimesPost { get; }
    public Limit HoleTimesLargePost { get; }
    public Limit HoleLargePost { get; }
    public Limit HoleDepth { get; }
    public Limit HoleDepthPerHeight { get; }
    public Limit HoleDepthFrom { get; }
    public Limit PostTerminalAbove { get; }
    public Limit PostLineBelow { get; }
    public Limit PostOrderStep { get; }
    public Limit BagYield { get; }
    public Limit RailStick { get; }
    public Limit WireCoil { get; }
    public Limit WireWrap { get; }
    public Limit BarOffFace { get; }
    public Limit BarShorter { get; }
    public Limit BandEndDistance { get; }
    public Limit BandMax { get; }
    public Limit TiePostMax { get; }
    public Limit TieRailMax { get; }
    public Limit RingMax { get; }
    public Limit RollLength { get; }
    public Limit RollTail { get; }
    public Limit BraceHeight { get; }
    public Limit GateSingleDeduct { get; }
    public Limit GateDoubleDeduct { get; }
    public Limit MeshAdvanceHigh { get; }

    /// <summary>The hole diameters an auger makes.</summary>
    public Ladder Augers { get; }

    public IEnumerable<Limit> All => limits.Values.OrderBy(l => l.Key, StringComparer.Ordinal);

    /// <exception cref="InvalidDataException">The rule set lacks the limit.</exception>
    public Limit this[string key] => Find(key) ?? throw new InvalidDataException($"rule set '{Name}' lacks '{key}'");

    public Limit? Find(string key) => limits.GetValueOrDefault(key);

    /// <summary>The base set this build carries.</summary>
    public static Rules BuiltIn() => Read(Resource.Text("rules-base.json"));

    /// <exception cref="JsonException">The text is no rule set; the message names the line.</exception>
    /// <exception cref="InvalidDataException">A limit is missing, or a row names an unknown unit or source.</exception>
    public static Rules Read(ReadOnlySpan<byte> json)
    {
        var file = JsonSerializer.Deserialize(json, CatalogJson.Default.RuleSetFile)!;
        var limits = file.Rules.Select(r => Read(r, file.Sources)).ToDictionary(l => l.Key, StringComparer.Ordinal);
        var augers = file.Ladders.Single(l => l.Key == "auger");
        return new Rules(file.Name, file.Title, limits, new Ladder(
            augers.Key, [.. augers.SizesIn.Select(s => Length.FromInches(s).Metres)],
            Sources.From(file.Sources, augers.Source, augers.Clause, augers.Confidence)));
    }

    /// <summary>The same rules with the job's own limits in place; an unknown rule or a value out of reason is left out.</summary>
    public Rules AsSpecified(IEnumerable<RuleOverride> overrides)
    {
        var mine = new Dictionary<string, Limit>(limits, StringComparer.Ordinal);
        foreach (var own in overrides.Where(IsUsable))
        {
            var source = new Provenance(own.Source.Length > 0 ? own.Source : "the job", "", "", Confidence.AsSpecified);
            mine[own.Rule] = mine[own.Rule] with { Value = own.Value, From = source };
        }
        return new Rules(Name, Title, mine, Augers);
    }

    /// <summary>A rule that exists, with a finite value above zero.</summary>
    public bool IsUsable(RuleOverride own) => limits.ContainsKey(own.Rule) && double.IsFinite(own.Value) && own.Value > 0;

    private static Limit Read(RuleFile row, IReadOnlyDictionary<string, SourceFile> sources)
    {
        var (value, unit) = row.Unit switch
        {
            "in" => (Length.FromInches(row.Value).Metres, Unit.Length),
            "mm" => (Length.FromMillimetres(row.Value).Metres, Unit.Length),
            "ft" => (Length.FromFeet(row.Value).Metres, Unit.Length),
            "ft3" => (Volume.FromCubicFeet(row.Value).CubicMetres, Unit.Volume),
            "%" => (row.Value / 100, Unit.Ratio),
            "deg" or "" => (row.Value, Unit.Ratio),
            var other => throw new InvalidDataException($"rule '{row.Key}' has the unit '{other}'; known are in, ft, mm, ft3, %, deg and none"),
        };
        return new Limit(row.Key, value, unit, row.Condition, Sources.From(sources, row.Source, row.Clause, row.Confidence));
    }
}
