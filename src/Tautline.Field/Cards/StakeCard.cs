using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Field.Cards;

/// <summary>One post as it is staked. All of it is the plan's but the reading of the rod.</summary>
/// <param name="Post">Index in the line's posts.</param>
/// <param name="Tape">Along the ground from the first post of the run; the tape lies on the slope.</param>
/// <param name="AboveStake">Top of the pipe over finished ground at the stake.</param>
/// <param name="Rod">What the rod reads on the top of the pipe under a level laser; nothing where no instrument height was given or the ground was not measured.</param>
/// <param name="Order">Length it is cut from.</param>
public sealed record StakeRow(
    int Post, int Number, PostKind Kind, Length Tape, Length AboveStake, Length? Rod, Support Support, Length HoleDiameter, Length HoleDepth, string Section, Length Cut, Length Order)
{
    /// <summary>The laser stands below the top of the pipe: no rod reads it.</summary>
    public bool UnderTop => Rod is { } rod && rod < Length.Zero;

    /// <summary>It stands there already: nothing is dug and no pipe is cut.</summary>
    public bool Stands => Support == Support.Standing;
}

/// <summary>The posts of a run in the order of the tape.</summary>
/// <param name="Ground">Whether the heights of the ground were measured, so that a laser can be used.</param>
public sealed record StakeCard(IReadOnlyList<StakeRow> Rows, bool Ground)
{
    /// <param name="instrument">Height of the laser over the job's datum.</param>
    public static StakeCard Of(Plan plan, int line, int run, Length? instrument)
    {
        var (planned, chain) = (plan.Lines[line], plan.Basis.Lines[line].Site.Chain);
        var along = planned.Runs[run];
        var first = chain.Along(planned.Posts[along.FromPost].Station.Nanometres);
        List<StakeRow> rows = [];
        for (var bay = 0; bay <= along.Bays; bay++)
        {
            var index = bay == along.Bays ? along.ToPost : (along.FromPost + bay) % planned.Posts.Count;
            var tape = chain.Along(planned.Posts[index].Station.Nanometres) - first;
            // A closed line comes back to its first post with a whole round on the tape.
            rows.Add(Row(planned.Posts[index], index, Length.FromNanometres(bay > 0 && tape <= 0 ? tape + chain.AlongNm : tape), instrument));
        }
        return new(rows, rows.Exists(r => planned.Posts[r.Post].TopHeight is not null));
    }

    private static StakeRow Row(PostPlan post, int index, Length tape, Length? instrument) => new(
        index, post.Number, post.Kind, tape, post.AboveGround, instrument is { } height && post.TopHeight is { } top ? height - top : null,
        post.Support, post.HoleDiameter, post.HoleDepth, post.Section, post.CutLength, post.OrderLength);
}
