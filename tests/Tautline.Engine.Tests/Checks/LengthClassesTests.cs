using CsCheck;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Tests.Checks;

public sealed class LengthClassesTests
{
    private static readonly Gen<LengthNeed[]> genNeeds = Gen.Select(Gen.Long[1, 130], Gen.Int[1, 9], (nm, count) => new LengthNeed(nm, count)).Array[1, 25];

    /// <summary>Every choice of so many of the lengths that are needed, in whole steps, is tried.</summary>
    [Fact]
    public void NothingCutsOffLessThanTheChosenLengths() => Gen.Select(genNeeds, Gen.Long[1, 20], Gen.Int[1, 4]).Always(
        (needs, step, most) =>
        {
            var chosen = LengthClasses.Choose(needs, step, most);
            var best = Choices([.. needs.Select(n => UpTo(n.Nm, step)).Distinct().Order()], most).Min(c => CutOff(needs, c));
            return chosen.Count <= most && chosen.All(c => c % step == 0) && chosen.SequenceEqual(chosen.Order()) && CutOff(needs, chosen) == best;
        },
        iter: 2000);

    [Fact]
    public void OrderAndRepetitionOfWhatIsNeededChangeNothing() => Gen.Select(genNeeds, Gen.Int[1, 4]).Always(
        (needs, most) => LengthClasses.Choose(needs, 6, most).SequenceEqual(
            LengthClasses.Choose([.. needs.Reverse().SelectMany(n => Enumerable.Repeat(n with { Count = 1 }, n.Count))], 6, most)));

    /// <summary>docs/checks/extras.md, few post lengths.</summary>
    [Fact]
    public void FiftyThousandDifferentLengthsAreParted()
    {
        LengthNeed[] needs = [.. Enumerable.Range(1, 50_000).Select(i => new LengthNeed(i, 1))];
        var chosen = LengthClasses.Choose(needs, 1, 5);
        Assert.Equal([10_000, 20_000, 30_000, 40_000, 50_000], chosen);
        Assert.Equal(249_975_000, needs.Sum(n => chosen.First(c => c >= n.Nm) - n.Nm));
    }

    [Fact]
    public void FewerLengthsThanClassesAreKept() => Assert.Equal([12, 24], LengthClasses.Choose([new(20, 3), new(7, 1), new(24, 1)], 12, 5));

    [Fact]
    public void NothingNeededIsNothingChosen() => Assert.Empty(LengthClasses.Choose([], 6, 2));

    [Theory]
    [InlineData(0, 1, 6, 2)]
    [InlineData(5, 0, 6, 2)]
    [InlineData(5, 1, 0, 2)]
    [InlineData(5, 1, 6, 0)]
    public void LengthsCountsStepAndClassesAreAboveZero(long nm, int count, long step, int most)
        => Assert.Throws<ArgumentOutOfRangeException>(() => LengthClasses.Choose([new(nm, count)], step, most));

    private static long UpTo(long nm, long step) => (nm + step - 1) / step * step;

    private static long CutOff(LengthNeed[] needs, IReadOnlyList<long> lengths) => needs.Sum(n => n.Count * (lengths.First(l => l >= n.Nm) - n.Nm));

    /// <summary>The longest with every choice of fewer others.</summary>
    private static IEnumerable<long[]> Choices(long[] lengths, int most)
        => Subsets(lengths[..^1], most - 1).Select(s => s.Append(lengths[^1]).ToArray());

    private static IEnumerable<IEnumerable<long>> Subsets(long[] of, int most)
        => most == 0 || of.Length == 0 ? [[]] : Subsets(of[1..], most).Concat(Subsets(of[1..], most - 1).Select(s => s.Prepend(of[0])));
}
