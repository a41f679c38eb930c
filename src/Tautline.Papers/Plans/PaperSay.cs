using System.Globalization;
using Tautline.Documents.Words;
using Tautline.Engine.Fabric;
using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Takeoff;

namespace Tautline.Papers.Plans;

/// <summary>Figures of a plan in the words of a paper's language. Numbers are the plan's; nothing is worked out.</summary>
internal sealed class PaperSay(PaperChoice choice)
{
    public Phrases Say { get; } = choice.Say;

    public PlanWords Words { get; } = new(choice.Units);

    public string this[string key] => Say[key];

    public string Kind(PostKind kind) => Say["kind." + PlanWords.Kind(kind)];

    /// <summary>The kind without the word 'post', for a narrow column.</summary>
    public string ShortKind(PostKind kind) => Say["paper.kind." + PlanWords.Kind(kind)];

    public static string Range(int low, int high, string to) => low == high ? Number(low) : $"{Number(low)} {to} {Number(high)}";

    public string Range(int low, int high) => Range(low, high, Say["paper.to"]);

    public string Range(NanometreRange range, Func<Length, string> show)
        => range.IsExact ? show(Length.FromNanometres(range.Low)) : $"{show(Length.FromNanometres(range.Low))} {Say["paper.to"]} {show(Length.FromNanometres(range.High))}";

    public string Range(LengthRange range)
        => Words.Signed(range.Low) is var low && Words.Signed(range.High) is var high && low == high ? low : $"{low} {Say["paper.to"]} {high}";

    public static string Number(double value, string format = "#,0") => value.ToString(format, CultureInfo.InvariantCulture);

    public string Volume(Volume volume) => choice.Units == UnitSystem.Metric
        ? Say.Say("paper.cubicMetres", ("n", Number(volume.CubicMetres, "0.000"))) : Say.Say("paper.cubicFeet", ("n", Number(volume.CubicFeet, "0.00")));

    public string Area(Area area) => choice.Units == UnitSystem.Metric
        ? Say.Say("paper.squareMetres", ("n", Number(area.SquareMetres, "0.00"))) : Say.Say("paper.squareFeet", ("n", Number(area.SquareFeet, "#,0.0")));

    /// <summary>How a post is held.</summary>
    public string Held(PostPlan post) => post.Support switch
    {
        Support.Standing => Say["paper.held.stands"],
        Support.Plated => Say["paper.held.plate"],
        Support.Bracketed => Say.Say("paper.held.brackets", ("n", post.Brackets ?? 0), ("depth", Words.Short(post.HoleDepth))),
        Support.Driven => Say.Say("paper.held.driven", ("depth", Words.Short(post.HoleDepth))),
        Support.Cored => Say.Say("paper.held.core", ("hole", Words.Hole(post.HoleDiameter, post.HoleDepth))),
        _ => Words.Hole(post.HoleDiameter, post.HoleDepth),
    };

    /// <summary>Places in diamonds, as a crew counts them: '1 down, then every 4, last one 2 ½'.</summary>
    public string Positions(FasteningSet set)
    {
        IReadOnlyList<double> at = set.Diamonds;
        if (at.Count == 0) return Say["paper.none"];
        if (at.Count == 1) return Say.Say("paper.at.one", ("a", Diamonds(at[0])));
        double[] spaces = [.. at.Zip(at.Skip(1), (a, b) => b - a)];
        if (spaces.SkipLast(1).Any(s => Math.Abs(s - spaces[0]) > 1e-9)) return Say.Say("paper.at.each", ("list", string.Join(", ", at.Select(Diamonds))));
        return Math.Abs(spaces[^1] - spaces[0]) > 1e-9
            ? Say.Say("paper.at.last", ("a", Diamonds(at[0])), ("every", Diamonds(spaces[0])), ("last", Diamonds(spaces[^1])))
            : Say.Say("paper.at.every", ("a", Diamonds(at[0])), ("every", Diamonds(spaces[0])));
    }

    public string Method(RunHang hang) => Say.Method(hang, Words);

    public string Turn(PieceTurn turn) => turn == PieceTurn.None ? "" : Say["paper.turn." + turn.ToString()];

    public string Match(FabricSplice splice) => Say["paper.splice." + splice.Match.ToString()] + (splice.Certain ? "" : " " + Say["rolls.perhaps"]);

    /// <summary>Whole or half: 4, 2½.</summary>
    public static string Diamonds(double diamonds) => HangPhrases.Diamonds(diamonds);

    /// <inheritdoc cref="HangPhrases.Cut"/>
    public IEnumerable<string> Cut(BiasCut cut) => Say.Cut(cut);

    /// <inheritdoc cref="HangPhrases.CutNotes"/>
    public IReadOnlyList<string> CutNotes(BiasCut cut) => Say.CutNotes(cut);

    /// <inheritdoc cref="HangPhrases.Slide"/>
    public string Slide(StackItem item) => Say.Slide(item);

    /// <inheritdoc cref="HangPhrases.Moved"/>
    public string Moved(StackMove move) => Say.Moved(move);

    public string Part(string part, string name) => Say.Or("part." + part, name);

    /// <summary>Size, section and finish of what is bought.</summary>
    public string Size(TakeoffLine line)
    {
        string size = line.Size is not { } length ? "" : line.Part == "tension-bar" ? Words.Short(length) : Words.Long(length);
        string finish = line.Finish is { } colour ? Say.Or("colour." + colour, Say.Or("coating." + colour, colour)) : "";
        return string.Join(", ", new[] { line.Section ?? "", size, finish, line.Spec is { } spec ? Say.Say("paper.ofSpec", ("id", spec.Value)) : "" }.Where(p => p.Length > 0));
    }

    public string Net(TakeoffLine line) => line.NetUnit switch
    {
        QuantityUnit.Length => Words.Long(new Length(line.Net)),
        QuantityUnit.Volume => Volume(new Volume(line.Net)),
        QuantityUnit.Area => Area(new Area(line.Net)),
        _ => Number(line.Net),
    };

    public string Amount(TakeoffLine line, double net) => Net(line with { Net = net });

    public string Purchase(TakeoffLine line) => line.PurchaseUnit switch
    {
        PurchaseUnit.AsMeasured => Say["paper.buy.measured"],
        PurchaseUnit.Each => Number(line.Purchase),
        _ => Say.Count("paper.buy." + line.PurchaseUnit.ToString().ToLowerInvariant(), (int)line.Purchase),
    };

    public string Remarks(TakeoffLine line)
    {
        List<string> remarks = [];
        if (line.BagsByTotal is { } bags) remarks.Add(Say.Say("paper.remark.bags", ("n", bags)));
        if (line.Left is { } left) remarks.Add(Say.Say("paper.remark.left", ("length", Words.Long(left))));
        if (line.CutOffs is { } cut) remarks.Add(Say.Say("paper.remark.cut", ("length", Words.Long(cut))));
        if (line.Spare is > 0) remarks.Add(Say.Say("paper.remark.spare", ("n", Number(line.Spare.Value))));
        if (line.Verify) remarks.Add(Say["paper.verify"]);
        return string.Join("; ", remarks);
    }

    /// <summary>What a spec is made of, in one sentence.</summary>
    public string Made(SpecPlan spec, Plan plan)
    {
        ResolvedSpec asked = plan.Basis.Specs.First(s => s.Spec.Id == spec.Id);
        return Say.Say(
            "paper.made", ("height", Words.Long(spec.Height)), ("mesh", Words.Short(asked.Fabric.Mesh)), ("gauge", asked.Fabric.Gauge), ("line", spec.LinePost), ("terminal", spec.TerminalPost),
            ("frame", spec.TopRail ? Say.Say("paper.made.rail", ("rail", spec.Rail)) : Say["paper.made.wire"]),
            ("bottom", Say[asked.Spec.Bottom == "rail" ? "paper.made.bottomRail" : spec.BottomWire ? "paper.made.bottomWire" : "paper.made.noBottom"]),
            ("brace", Say[spec.Braced ? "paper.made.braced" : "paper.made.unbraced"]), ("selvage", asked.Selvage), ("finish", asked.Finish is { } finish ? ", " + Say.Or("colour." + finish, Say.Or("coating." + finish, finish)) : ""));
    }

    /// <summary>A line of the plan by its name, or by its id.</summary>
    public string Line(LinePlan line)
    {
        string name = line.Name.Length > 0 ? line.Name : line.Id.Value;
        // 'line 1', as a drawn line is called until somebody names it, is not said twice.
        return Say.Say("paper.lineNamed", ("name", name.StartsWith("line ", StringComparison.OrdinalIgnoreCase) ? name[5..] : name));
    }

    public static string Job(Plan plan) => plan.Basis.Job.Name is { Length: > 0 } name ? name : plan.Job.Value;

    public IReadOnlyList<string> Cautions(params ReadOnlySpan<int> which)
    {
        List<string> all = [];
        foreach (int i in which) all.Add(Say["caution." + i.ToString(CultureInfo.InvariantCulture)]);
        return all;
    }
}
