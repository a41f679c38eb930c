using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

public static partial class HangWords
{
    /// <summary>What holds on every pull. Common practice, no source.</summary>
    public static IReadOnlyList<string> EveryPull { get; } =
    [
        "Shake the fabric as it is pulled: where it catches on the ground, slack stays behind the first tie-off.",
        "The bar follows one and the same picket from top to bottom, on both fabrics.",
        "To free an end picket cut on both sides of its knuckle and of its twist: the next one then stays whole for a splice.",
        "A splice wants a whole diamond at one end and a half one at the other; of two alike take one picket off.",
        "On a line post tie the picket nearest to the post.",
    ];

    /// <summary>Fabric as it is called out: mesh x gauge x height and its edges, such as '2 x 9 x 84 KT'. Inches.</summary>
    public static string CallOut(ResolvedSpec spec)
        => $"{LengthText.Inches(spec.Fabric.Mesh, 8).TrimEnd('"')} x {spec.Fabric.Gauge} x {LengthText.Inches(spec.Woven.Height, 2).TrimEnd('"')} {spec.Selvage}";

    /// <summary>Bands, ties and rings of a spec on level ground, by what is fastened: limit and practice side by side.</summary>
    public static IReadOnlyList<(string Thing, IReadOnlyList<string> Sentences)> Fastenings(ResolvedSpec spec, UnitSystem units)
    {
        var bar = new Length(Fastening.Bar(PostFormulas.Plumb<Reasons.Plain>(spec.Width.Metres, 0), spec.Rules).Value);
        List<(string, IReadOnlyList<string>)> all =
        [
            ("bands", Fastenings(FasteningChoice.Of(spec, bar, spec.Rules.BandMax), "band", units)),
            ("post ties", Fastenings(FasteningChoice.Of(spec, bar, spec.Rules.TiePostMax), "tie", units)),
        ];
        if (spec.Rails > 0) all.Add(("rail ties", Fastenings(AlongChoice.RailTies(spec), "rail tie", units)));
        if (spec.Wires > 0) all.Add(("rings", Fastenings(AlongChoice.Rings(spec), "ring", units)));
        return all;
    }

    /// <summary>Which end may be cut before it hangs: the first-tied one alone; the far end is read under tension.</summary>
    public static string Ahead(RunPlan run, bool start, string command)
    {
        var end = start ? run.Start : run.Finish;
        if ((start ? run.FromPost : run.ToPost) == run.Hang.FirstTie) return "The first-tied end: cut it before it hangs.";
        return $"The far end, {PlanWords.Range(end.ColumnsLow, end.ColumnsHigh)} pickets as reckoned: do not cut it ahead. Read top and bottom under tension{command}.";
    }
}
