namespace Tautline.Engine.Fabric.Rolls;

/// <summary>Pieces of each pull into what a machine carries woven together, in hanging order.</summary>
internal static class LoadStage
{
    public static IEnumerable<MachineLoad> Of(PullFeed feed, double kilogramsPerMetre, CarryLimit limit)
    {
        for (int from = 0, to; from < feed.Pieces.Count; from = to)
        {
            var length = feed.Pieces[from].Length.High;
            for (to = from + 1; to < feed.Pieces.Count && to - from < limit.Rolls && length + feed.Pieces[to].Length.High <= limit.LengthNm; to++)
                length += feed.Pieces[to].Length.High;
            yield return new MachineLoad(feed.Pull, from, to - from, length, length * 1e-9 * kilogramsPerMetre, length > limit.LengthNm);
        }
    }
}
