namespace Tautline.Engine.Fabric.Rolls;

/// <summary>Finds all that is wrong with a request; what remains can be planned.</summary>
internal sealed class RollCheck
{
    /// <summary>Longest roll or pull reckoned with: 10 km.</summary>
    public const long MostNm = 10_000_000_000_000;

    /// <summary>Most pickets of a roll or pull.</summary>
    public const int MostPickets = 1_000_000;

    private readonly List<RollFinding> findings = [];
    private readonly HashSet<string> sound = [];

    private RollCheck()
    {
    }

    /// <summary>The request without what cannot be used, and why.</summary>
    public static (RollRequest Sound, List<RollFinding> Findings) Of(RollRequest request)
    {
        var check = new RollCheck();
        if (request.LeastUsefulNm < 0) check.Add(RollFindingKind.LeastUsefulWrong, "", request.LeastUsefulNm);
        if (request.Carry.Rolls < 1 || request.Carry.LengthNm < 1) check.Add(RollFindingKind.CarryLimitWrong, "", request.Carry.Rolls, request.Carry.LengthNm);
        request = request with
        {
            LeastUsefulNm = Math.Max(0, request.LeastUsefulNm),
            Carry = request.Carry.Rolls < 1 || request.Carry.LengthNm < 1 ? CarryLimit.CommonPractice : request.Carry,
            Kinds = check.Unlike(request.Kinds, k => k.Key).Where(check.IsSound).ToList(),
        };
        check.sound.UnionWith(request.Kinds.Select(k => k.Key));
        return (check.WithStock(request with { Pulls = [.. check.Unlike(request.Pulls, p => p.Id).Where(check.IsSound)] }), check.findings);
    }

    private RollRequest WithStock(RollRequest request)
    {
        var ids = Unlike([.. request.New.Select(n => n.Id), .. request.Remnants.Select(r => r.Id)], id => id).ToHashSet();
        return request with
        {
            New = [.. request.New.Where(n => ids.Remove(n.Id) && IsSound(n, request))],
            Remnants = [.. request.Remnants.Where(r => ids.Remove(r.Id) && IsSound(r, request))],
        };
    }

    private bool Add(RollFindingKind kind, string subject, long found = 0, long right = 0)
    {
        findings.Add(new RollFinding(kind, subject, found, right));
        return false;
    }

    private List<T> Unlike<T>(IReadOnlyList<T> items, Func<T, string> id)
    {
        HashSet<string> seen = [];
        List<T> unlike = [];
        foreach (var item in items)
            if (seen.Add(id(item))) unlike.Add(item);
            else Add(RollFindingKind.IdTwice, id(item));
        return unlike;
    }

    private bool IsSound(FabricKind kind)
    {
        var before = findings.Count;
        if (kind.AdvanceLowNm < 1 || kind.AdvanceHighNm < kind.AdvanceLowNm) Add(RollFindingKind.AdvanceWrong, kind.Key, kind.AdvanceLowNm, kind.AdvanceHighNm);
        if (!double.IsFinite(kind.KilogramsPerMetre) || kind.KilogramsPerMetre < 0) Add(RollFindingKind.WeightWrong, kind.Key);
        return findings.Count == before;
    }

    private bool IsSound(FabricPull pull)
    {
        var before = findings.Count;
        var pickets = pull.Pickets;
        if (!sound.Contains(pull.Kind)) Add(RollFindingKind.KindUnknown, pull.Id);
        if (pull.NeedNm < 1) Add(RollFindingKind.NeedNotPositive, pull.Id, pull.NeedNm);
        if (pull.NeedNm > MostNm) Add(RollFindingKind.LengthTooGreat, pull.Id, pull.NeedNm, MostNm);
        if (pickets.Low < 1 || pickets.High < pickets.Low || pickets.High > MostPickets) Add(RollFindingKind.PicketsWrong, pull.Id, pickets.Low, pickets.High);
        if (pull.PartPickets < 0 || pull.PartPickets > pickets.Least) Add(RollFindingKind.PartPicketsWrong, pull.Id, pull.PartPickets, pickets.Least);
        if (pull.ToNm < pull.FromNm) Add(RollFindingKind.StationsWrong, pull.Id, pull.ToNm, pull.FromNm);
        return findings.Count == before;
    }

    private bool IsSound(NewRolls rolls, RollRequest request)
    {
        var before = findings.Count;
        if (rolls.Count < 0) Add(RollFindingKind.CountWrong, rolls.Id, rolls.Count.Value);
        Roll(rolls.Id, rolls.Kind, rolls.LengthNm, rolls.Counted, request);
        return findings.Count == before;
    }

    private bool IsSound(Remnant remnant, RollRequest request)
    {
        var before = findings.Count;
        Roll(remnant.Id, remnant.Kind, remnant.LengthNm, remnant.Counted, request);
        if (remnant is { Counted: { } counted, First: { } first, Far: { } far } && first == far != (counted % 2 == 0)) Add(RollFindingKind.EndsDisagree, remnant.Id, counted);
        return findings.Count == before;
    }

    private void Roll(string id, string kind, long length, int? counted, RollRequest request)
    {
        if (length < 1) Add(RollFindingKind.RollHasNoLength, id, length);
        if (length > MostNm) Add(RollFindingKind.LengthTooGreat, id, length, MostNm);
        if (counted is < 1 or > MostPickets) Add(RollFindingKind.PicketsWrong, id, counted.Value, counted.Value);
        if (!sound.Contains(kind)) Add(RollFindingKind.KindUnknown, id);
        else if (Shortest(kind, counted, request) is var least && length >= 1 && length < least) Add(RollFindingKind.RollTooShort, id, length, least);
        else if (counted is null && length / request.Kinds.First(k => k.Key == kind).AdvanceLowNm > MostPickets) Add(RollFindingKind.LengthTooGreat, id, length, MostNm);
    }

    private static long Shortest(string kind, int? counted, RollRequest request)
        => Math.Max(request.LeastUsefulNm, counted is null ? request.Kinds.First(k => k.Key == kind).AdvanceHighNm : 1);
}
