namespace Tautline.Engine.Layout.Fit;

/// <summary>Reads off a finished top line what it costs, where it touches its limits and which it could not keep.</summary>
internal static class FitReport
{
    // A limit counts as reached within a hundredth of a millimetre, as broken beyond that.
    private const double Touch = 1e-5;
    private const double SlopeTouch = 1e-6;

    public static FittedLine Of(FitInput input, GroundProfile ground, List<FitBlock> blocks, double[] tops, double[] plumb, FitCertificate certificate)
    {
        List<FittedBay> bays = new(plumb.Length);
        foreach (var block in blocks)
            for (var i = 0; i < block.Bays; i++) bays.Add(Bay(block, i, tops, plumb));
        double[] excess = [.. tops.Select((top, i) => Math.Max(0, top - ground.At(input.Posts[i].Station) - input.Posts[i].LongestAbove))];
        List<FitBinding> bindings = [];
        List<FitViolation> violations = [];
        foreach (var bay in bays) ReadBay(input, bay, bindings, violations);
        for (var i = 0; i < tops.Length; i++) ReadPost(input, ground, bays, tops, i, bindings, violations);
        return new FittedLine(tops, bays, excess, bindings, violations, MisfitList.Of(input, ground, bays), certificate);
    }

    private static FittedBay Bay(FitBlock block, int i, double[] tops, double[] plumb)
    {
        var at = block.First + i;
        var (cut, fill) = block.Misfit(i, tops[at], tops[at + 1], plumb[at]);
        return new FittedBay(at, block.Post(i).Station, block.Post(i + 1).Station, tops[at], tops[at + 1], plumb[at], cut, fill);
    }

    private static void ReadBay(FitInput input, FittedBay bay, List<FitBinding> bindings, List<FitViolation> violations)
    {
        var over = Math.Abs(bay.Slope) - input.Limits.GreatestRake;
        if (over > SlopeTouch) violations.Add(new FitViolation(FitLimit.Rake, bay.Index, bay.From, over));
        else if (over > -SlopeTouch) bindings.Add(new FitBinding(FitLimit.Rake, bay.Index, bay.From));
        if (bay.Cut > Touch && (input.Allowed & (Remedies.TrimOrBury | Remedies.Grading)) == 0)
            violations.Add(new FitViolation(FitLimit.LeastGap, bay.Index, bay.From, bay.Cut));
        if (bay.Fill > Touch && (input.Allowed & (Remedies.ClosurePiece | Remedies.Grading)) == 0)
            violations.Add(new FitViolation(FitLimit.MostGap, bay.Index, bay.From, bay.Fill));
    }

    private static void ReadPost(
        FitInput input, GroundProfile ground, List<FittedBay> bays, double[] tops, int i, List<FitBinding> bindings, List<FitViolation> violations)
    {
        var post = input.Posts[i];
        var beyond = tops[i] - ground.At(post.Station) - post.LongestAbove;
        if (beyond > Touch && (input.Allowed & Remedies.LongerPost) == 0) violations.Add(new FitViolation(FitLimit.PostLength, i, post.Station, beyond));
        else if (Math.Abs(beyond) <= Touch) bindings.Add(new FitBinding(FitLimit.PostLength, i, post.Station));
        if (post.Terminal || i == 0 || i == tops.Length - 1) return;
        var bend = Math.Abs(bays[i].Slope - bays[i - 1].Slope) - input.Limits.GreatestBend;
        if (bend > SlopeTouch) violations.Add(new FitViolation(FitLimit.Bend, i, post.Station, bend));
        else if (bend > -SlopeTouch) bindings.Add(new FitBinding(FitLimit.Bend, i, post.Station));
    }
}
