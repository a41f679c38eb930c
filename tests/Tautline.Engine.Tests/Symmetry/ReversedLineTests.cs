using System.Text;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>The same fence needs the same things, from whichever end it is walked and on whichever side it is seen.</summary>
public sealed class ReversedLineTests
{
    private static string Shown(Job job) => Encoding.UTF8.GetString(JobFile.Write(job));

    [Fact]
    public void AJobWalkedFromTheOtherEndNeedsAndTellsTheSame()
        => GenFence.Any.Always(job =>
        {
            var plan = Some.Plan(job);
            if (plan.HasErrors) return;
            var back = Some.Plan(Turned.Reversed(job, Turned.Levels(plan)));
            Needs.AssertSameTold(plan, back);
            Needs.AssertSameNet(plan, back);
            Needs.AssertSameLayout(plan, back);
        }, iter: 300, print: Shown);

    [Fact]
    public void AJobSeenInAMirrorNeedsAndTellsTheSame()
        => GenFence.Any.Always(job =>
        {
            var (plan, mirrored) = (Some.Plan(job), Some.Plan(Turned.Mirrored(job)));
            Needs.AssertSameTold(plan, mirrored);
            Needs.AssertSameNet(plan, mirrored);
            Needs.AssertSameLayout(plan, mirrored);
        }, iter: 150, print: Shown);

    /// <summary>What the others are worth: most of the jobs plan.</summary>
    [Fact]
    public void MostOfTheJobsPlan()
    {
        var (whole, all) = (0, 0);
        GenFence.Any.Always(job =>
        {
            Interlocked.Increment(ref all);
            if (!Some.Plan(job).HasErrors) Interlocked.Increment(ref whole);
        }, iter: 100, print: Shown);
        Assert.InRange(whole / (double)all, 0.6, 1);
    }

    /// <summary>
    /// The one thing that may differ. 36 ft with a no-dig stretch in the very middle are their own mirror image, so of the two best
    /// placings (two bays of 8.2917 ft and two of 9.7083 ft, this way or that) each is the other's. The placer sees lengths alone and
    /// takes the same from whichever end: on the ground the other. Posts by kind and bays are the same, but another post comes to
    /// stand on a slab that lies on one side only.
    /// </summary>
    [Fact]
    public void OfTwoBestPlacingsThatMirrorEachOtherTheWalkTakesOne()
    {
        Obstacle Stretch(string kind, double from, double to)
            => new() { Id = new(kind), Leg = new("main/leg1"), Kind = kind, From = Length.FromFeet(from), To = Length.FromFeet(to) };
        var plans = EitherWay.Plans(Some.Job(Some.Line("main", false, [(0, 0), (0, 36)])) with
        {
            Obstacles = [Stretch("no-dig", 17, 19), Stretch("slab", 19, 20)],
        });
        Needs.AssertSameLayout(plans[0], plans[1]);
        Assert.All(plans, p => Assert.Equal(9.708333, p.Lines[0].Runs[0].LargestBay.Feet, 6));
        Assert.Equal([0, 1], plans.Select(p => p.Lines[0].Posts.Count(post => post.Support == Support.Cored)).Order());
    }
}
