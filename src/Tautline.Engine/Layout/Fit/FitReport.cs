namespace Tautline.Engine.Layout.Fit;

/// <summary>Reads off a finished top line what it costs, where it touches its limits and which it could not keep.</summary>
internal static class FitReport
{
    // A limit counts as reached within a hundredth of a millimetre, as broken beyond that.
    private const double Touch = 1e-5;
    private const double SlopeTouch = 1e-6;

    /// <param name="bays">As <see cref="Bay"/> makes them.</param>
    public static FittedLine Of(FitInput input, GroundProfile ground, IReadOnlyList<FittedBay> bays, double[] tops, FitCertificate certificate)
    {
        double[] excess = [.. tops.Select((top, i) => Math.Max(0, top - ground.At(input.Posts[i].Station) - input.Posts[i].LongestAbove))];
        List<FitBinding> bindings = [];
        List<FitViolation> violations = [];
        foreach (var bay in bays) ReadBay(input, bay, bindings, violations);
        for (var i = 0; i < tops.Length; i++) ReadPost(input, ground, bays, tops, i, bindings, violations);
        return new FittedLine(tops, bays, excess, bindings, violations, MisfitList.Of(input, ground, bays), certificate);
    }

    public static FittedBay Bay(FitInput input, BayHulls hulls, int i, double top, double next, double plumb)
    {
        var (least, most) = hulls.Gaps(i, top, next, plumb);
        var (cut, fill) = (Math.Max(0, input.Limits.LeastGap - least), Math.Max(0, most - input.Limits.MostGap));
        return new FittedBay(i, input.Posts[i].Station, input.Posts[i + 1].Station, top, next, plumb, least, most, cut, fill);
    }

    private static void ReadBay(FitInput input, FittedBay bay, List<FitBinding> bindings, List<FitViolation> violations)
    {
        var over = Math.Abs(bay.Slope) - input.Limits.GreatestRake;
        if (over > SlopeTouch) violations.Add(new FitViolation(FitLimit.Rake, bay.Index, bay.From, over));
        else if (over > -SlopeTouch) bindings.Add(new FitBinding(FitLimit.Rake, bay.Index, bay.From));
        if (bay.Cut > Touch && (input.Allowed & (Remedies.TrimOrBury | Remedies.Grading)) == 0)
            violations.Add(new FitViolation(FitLimit.LeastGap, bay.Index, bay.From, bay.Cut));
        else if (bay.LeastGap < input.Limits.LeastGap + Touch) bindings.Add(new FitBinding(FitLimit.LeastGap, bay.Index, bay.From));
        if (bay.Fill > Touch && (input.Allowed & (Remedies.ClosurePiece | Remedies.Grading)) == 0)
            violations.Add(new FitViolation(FitLimit.MostGap, bay.Index, bay.From, bay.Fill));
        else if (bay.MostGap > input.Limits.MostGap - Touch) bindings.Add(new FitBinding(FitLimit.MostGap, bay.Index, bay.From));
    }

    private static void ReadPost(
        FitInput input, GroundProfile ground, IReadOnlyList<FittedBay> bays, double[] tops, int i, List<FitBinding> bindings, List<FitViolation> violations)
    {
        var post = input.Posts[i];
        var beyond = tops[i] - ground.At(post.Station) - post.LongestAbove;
        if (beyond > Touch && (input.Allowed & Remedies.LongerPost) == 0) violations.Add(new FitViolation(FitLimit.PostLength, i, post.Station, beyond));
        else if (Math.Abs(beyond) <= Touch) bindings.Add(new FitBinding(FitLimit.PostLength, i, post.Station));
        if (post.Terminal || i == 0 || i == tops.Length - 1 || input.Mode == FitMode.Stepped) return;
        var bend = Math.Abs(bays[i].Slope - bays[i - 1].Slope) - input.Limits.GreatestBend;
        if (bend > SlopeTouch) violations.Add(new FitViolation(FitLimit.Bend, i, post.Station, bend));
        else if (bend > -SlopeTouch) bindings.Add(new FitBinding(FitLimit.Bend, i, post.Station));
    }
}
