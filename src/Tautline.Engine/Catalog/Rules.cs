using System.Text.Json;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Catalog;

/// <summary>A rule set: every limit the calculation asks for, each with its source and the set that gave it. Immutable.</summary>
public sealed class Rules
{
    private readonly Dictionary<string, IReadOnlyList<Limit>> limits;

    private Rules(string name, string title, string? extends, Dictionary<string, IReadOnlyList<Limit>> limits, Ladder augers)
    {
        (Name, Title, Extends, this.limits, Augers) = (name, title, extends, limits, augers);
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
        BarbHeight = this["barb.height"];
        BarbReach = this["barb.reach"];
        BarbTail = this["barb.tail"];
        BarbSpool = this["barb.spool"];
        CantileverPost = this["gate.cantileverPost"];
        CantileverTail = this["gate.cantileverTail"];
        SpoilSwell = this["spoil.swell"];
        GroutYield = this["grout.yield"];
        DrivenDepth = this["driven.depth"];
        CoreWider = this["rock.coreOver"];
        CoreDepth = this["rock.coreDepth"];
        RemovalPostSpacing = this["removal.postSpacing"];
        RemovalFooting = this["removal.footing"];
        OverBreak = this["concrete.overBreak"];
        AnchorEdge = this["anchor.edge"];
        BracketPerPost = this["bracket.perPost"];
        BracketAnchors = this["bracket.anchors"];
        BracketDepth = this["bracket.depth"];
        ScreenTie = this["screen.tie"];
        SpareSmall = this["spare.small"];
        TemporaryPanel = this["temporary.panel"];
        TemporaryBallast = this["temporary.ballast"];
        RollingOver = this["gate.rollingOver"];
        MeshAdvanceHigh = this["mesh.advanceHigh"];
        HangHandMax = this["hang.handMax"];
        HangPullMax = this["hang.pullMax"];
        HangLeastPiece = this["hang.leastPiece"];
        GapMin = this["gap.min"];
        GapMax = this["gap.max"];
        RakeMax = this["rail.rakeMax"];
        GradingWidth = this["grading.width"];
        GradingBreakOver = this["grading.breakOver"];
        RunMaxWithoutRail = Find("run.maxWithoutRail");
        HoleLineDiameterMin = Find("hole.lineDiameterMin");
        HoleTerminalDiameterMin = Find("hole.terminalDiameterMin");
        HoleLineDepthMin = Find("hole.lineDepthMin");
        HoleTerminalDepthMin = Find("hole.terminalDepthMin");
        HoleConcreteBelow = Find("hole.concreteBelow");
        BraceAtHeight = Find("brace.atHeight");
        RailSize = Find("rail.size");
        PostLengthClasses = Find("post.lengthClasses");
    }

    public string Name { get; }

    public string Title { get; }

    /// <summary>The set below it, whose limits hold where this one states none; nothing for a set that states all.</summary>
    public string? Extends { get; }

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
    public Limit BarbHeight { get; }
    public Limit BarbReach { get; }
    public Limit BarbTail { get; }
    public Limit BarbSpool { get; }
    public Limit CantileverPost { get; }
    public Limit CantileverTail { get; }
    public Limit SpoilSwell { get; }
    public Limit GroutYield { get; }
    public Limit DrivenDepth { get; }
    public Limit CoreWider { get; }
    public Limit CoreDepth { get; }
    public Limit RemovalPostSpacing { get; }
    public Limit RemovalFooting { get; }
    public Limit OverBreak { get; }
    public Limit AnchorEdge { get; }
    public Limit BracketPerPost { get; }
    public Limit BracketAnchors { get; }
    public Limit BracketDepth { get; }
    public Limit ScreenTie { get; }
    public Limit SpareSmall { get; }
    public Limit TemporaryPanel { get; }
    public Limit TemporaryBallast { get; }
    public Limit RollingOver { get; }
    public Limit MeshAdvanceHigh { get; }
    public Limit HangHandMax { get; }
    public Limit HangPullMax { get; }
    public Limit HangLeastPiece { get; }
    public Limit GapMin { get; }
    public Limit GapMax { get; }
    public Limit RakeMax { get; }
    public Limit GradingWidth { get; }
    public Limit GradingBreakOver { get; }

    // What a set need not state; what holds then is said in RuleKeys.
    public Limit? RunMaxWithoutRail { get; }
    public Limit? HoleLineDiameterMin { get; }
    public Limit? HoleTerminalDiameterMin { get; }
    public Limit? HoleLineDepthMin { get; }
    public Limit? HoleTerminalDepthMin { get; }
    public Limit? HoleConcreteBelow { get; }
    public Limit? BraceAtHeight { get; }
    public Limit? RailSize { get; }
    public Limit? PostLengthClasses { get; }

    /// <summary>The hole diameters an auger makes.</summary>
    public Ladder Augers { get; }

    /// <summary>Every limit in order of key, those of several steps step by step.</summary>
    public IEnumerable<Limit> All => limits.OrderBy(l => l.Key, StringComparer.Ordinal).SelectMany(l => l.Value);

    /// <exception cref="InvalidDataException">The rule set lacks the limit.</exception>
    public Limit this[string key] => Find(key) ?? throw new InvalidDataException($"rule set '{Name}' lacks '{key}'");

    /// <summary>A limit of one value.</summary>
    public Limit? Find(string key) => limits.TryGetValue(key, out var found) && found[0].Step is null ? found[0] : null;

    /// <summary>The step of a limit that holds at a radius, height or leaf; nothing where the set states none for it.</summary>
    public Limit? At(string key, Length at) => limits.GetValueOrDefault(key)?.FirstOrDefault(l => l.Step is not { } step || step.Holds(at.Metres));

    /// <summary>Largest bay on a curve of this radius, never more than on a straight line.</summary>
    public Limit BayMaxAt(Length radius) => At("bay.curve", radius) is { } curve && curve.Value < BayMax.Value ? curve : BayMax;

    /// <summary>Longest stretch between terminals.</summary>
    public Limit RunMaxOf(bool topRail) => topRail ? RunMax : RunMaxWithoutRail ?? RunMax;

    /// <summary>Least tail of a cantilever leaf over this opening, where the set states one.</summary>
    public Limit? CantileverOverhang(Length opening) => At("gate.cantileverOverhang", opening);

    /// <summary>Diameter of a gate's posts, where the set states one for this fence and leaf.</summary>
    public Limit? GatePost(Length fenceHeight, Length leaf)
        => Find("gate.postSizeFence") is { } highest && fenceHeight.Nanometres > highest.Length.Nanometres ? null : At("gate.postSize", leaf);

    /// <summary>The base set this build carries.</summary>
    public static Rules BuiltIn() => RuleSets.Base;

    /// <summary>Reads a rule set; one that extends a built-in set takes from it what it does not state.</summary>
    /// <exception cref="JsonException">The text is no rule set; the message names the line.</exception>
    /// <exception cref="InvalidDataException">A limit is missing or unknown, or a row names an unknown unit, set or source.</exception>
    public static Rules Read(ReadOnlySpan<byte> json)
    {
        var file = RulesReader.File(json);
        var below = RulesReader.Below(file);
        Dictionary<string, IReadOnlyList<Limit>> limits = new(below?.limits ?? [], StringComparer.Ordinal);
        foreach (var stated in RulesReader.Limits(file)) limits[stated[0].Key] = stated;
        return new Rules(file.Name, file.Title ?? "", file.Extends, limits, AugersOf(file) ?? below?.Augers ?? throw new InvalidDataException("the ladder 'auger' is missing"));
    }

    /// <summary>The same rules with the job's own limits in place; an unknown rule or a value out of reason is left out.</summary>
    public Rules AsSpecified(IEnumerable<RuleOverride> overrides)
    {
        var mine = new Dictionary<string, IReadOnlyList<Limit>>(limits, StringComparer.Ordinal);
        foreach (var own in overrides.Where(IsUsable)) mine[own.Rule] = [Own(own)];
        return new Rules(Name, Title, Extends, mine, Augers);
    }

    /// <summary>A rule that exists, with a value it can have.</summary>
    public static bool IsUsable(RuleOverride own) => RuleKeys.Find(own.Rule) is { } rule && rule.Allows(own.Value);

    /// <summary>A job states one value; of a limit of several steps it holds for all.</summary>
    private Limit Own(RuleOverride own)
    {
        var rule = RuleKeys.Find(own.Rule)!;
        var source = new Provenance(own.Source.Length > 0 ? own.Source : "the job", "", "", Confidence.AsSpecified);
        return new Limit(
            rule, own.Value, Find(own.Rule)?.Condition ?? "", source, Limit.AsSpecified, rule.SteppedBy is null ? null : new Step(null, true));
    }

    private static Ladder? AugersOf(RuleSetFile file)
        => file.Ladders?.SingleOrDefault(l => l.Key == "auger") is not { } augers ? null : new Ladder(
            augers.Key, [.. augers.SizesIn.Select(s => Length.FromInches(s).Metres)],
            Sources.From(file.Sources, augers.Source, augers.Clause, augers.Confidence));
}
