using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Plans;

/// <summary>Works out every figure of a plan from the laid, set and hung lines, by the formulas that also answer 'why'.</summary>
public static class FigureStage
{
    public static IReadOnlyList<SpecPlan> Specs(IReadOnlyList<ResolvedSpec> specs, ProblemList problems)
    {
        if (problems.HasErrors) return [];
        return [.. specs.Select(s => Spec(s, problems))];
    }

    public static IReadOnlyList<LinePlan> Lines(IReadOnlyList<HungLine> lines, IReadOnlyList<SpecPlan> specs)
    {
        var bySpec = specs.ToDictionary(s => s.Id);
        return [.. lines.Select((l, i) => Line(l, i, bySpec))];
    }

    private static SpecPlan Spec(ResolvedSpec spec, ProblemList problems)
    {
        var rules = spec.Rules;
        var bar = Fastening.Bar(PostFormulas.Plumb<Plain>(spec.Width.Metres, 0), rules);
        var bands = Fastening.Positions(spec, (int)Fastening.Count(spec, bar, rules.BandMax).Value, rules.BandMax);
        var ties = Fastening.Positions(spec, (int)Fastening.Count(spec, bar, rules.TiePostMax).Value, rules.TiePostMax);
        var habit = Fastening.Habit(spec);
        var space = habit is null ? Length.Zero : new Length(Fastening.Pitch<Plain>(spec).Value) * habit.LargestSpace;
        var over = space.Nanometres > rules.BandMax.Length.Nanometres;
        var path = $"specs[{spec.Index}]";
        if (over) problems.Add(ProblemCode.HabitOverLimit, new(path), habit!.Count, spec.Width, space, rules.BandMax.Length);
        if (spec.Calibration is null) problems.Add(ProblemCode.RollUncalibrated, new(path), spec.Spec.Id.Value);
        return new SpecPlan(
            spec.Spec.Id, spec.Height, spec.Widths, spec.LinePost.Id, spec.TerminalPost.Id, spec.Rail.Id, spec.TopRail, spec.BottomWire, spec.Braced,
            spec.Diamonds.Diamonds, L(MeshFormulas.HalfDiamond<Plain>(spec)), L(MeshFormulas.AdvanceLow<Plain>(spec)),
            L(MeshFormulas.AdvanceHigh<Plain>(spec)), (int)MeshFormulas.WholeRows<Plain>(spec).Value,
            L(MeshFormulas.TieSpace<Plain>(spec, rules.TieRailMax)), L(MeshFormulas.TieSpace<Plain>(spec, rules.RingMax)),
            (int)MeshFormulas.Every<Plain>(spec, rules.TieRailMax).Value, (int)MeshFormulas.Every<Plain>(spec, rules.RingMax).Value, bands, ties, habit, over);
    }

    private static LinePlan Line(HungLine line, int index, Dictionary<SpecId, SpecPlan> specs)
    {
        var posts = line.Posts.Select(p => Post(p, line.Site.Chain, index, specs[p.Spec.Spec.Id])).ToList();
        var runs = line.Runs.Select((r, i) => Run(r, i, index, line.Site.Chain, specs[r.Run.Spec.Spec.Id])).ToList();
        return new LinePlan(
            line.Site.Line.Id, line.Site.Line.Name, line.Site.Line.Closed, Nm(line.Site.Chain.LevelNm), Nm(line.Site.Chain.AlongNm), posts, runs,
            [.. line.Site.Gates.Select(g => Gate(g, line))], [.. line.Site.Tasks.Select((t, i) => Work(t, index, i))])
        {
            Grading = [.. GradingFigures.Of(line).Select((m, i) => Grading(new GradingFigures(m, index, i)))],
            Fit = Fit(line.Set.Pieces),
        };
    }

    private static FitPlan? Fit(IReadOnlyList<FitPiece> pieces)
    {
        if (pieces.Count == 0) return null;
        var (mode, limits) = (pieces[0].Input.Mode, pieces[0].Input.Limits);
        var bindings = pieces.SelectMany(p => p.Fitted.Bindings).OrderBy(b => b.Station).ThenBy(b => b.Limit).Select(b => new BindingPlan(b.Limit, new Length(b.Station)));
        return new FitPlan(
            mode, new Length(limits.LeastGap), new Length(limits.MostGap), new Length(limits.WantedGap), [.. bindings],
            pieces.All(p => p.Fitted.Certificate.Sound));
    }

    private static GradingPlan Grading(GradingFigures f)
    {
        var (depth, area) = (f.Depth<Plain>().Value, f.Area<Plain>().Value);
        return new GradingPlan(
            new Length(f.Misfit.From), new Length(f.Misfit.To), f.Misfit.TooHigh, new Length(depth), new Area(area), new Volume(f.Volume<Plain>(area).Value),
            f.Misfit.Remedy);
    }

    private static BayPlan Bay(FittedBay bay) => new(
        new Length(bay.From), new Length(bay.To), new Length(bay.TopFrom), new Length(bay.TopTo), new Length(bay.Plumb), new Length(bay.LeastGap), new Length(bay.MostGap));

    private static PostPlan Post(PlacedPost post, Chain chain, int line, SpecPlan spec)
    {
        var figures = new PostFigures(post, line);
        var above = figures.AboveGround<Plain>();
        var (diameter, depth) = (figures.HoleDiameter<Plain>(), figures.HoleDepth<Plain>());
        var cut = figures.CutLength<Plain>(above.Value, depth.Value);
        var concrete = figures.Concrete<Plain>(diameter.Value, depth.Value);
        var (east, north) = chain.Point(post.StationNm);
        int? brackets = post.Support == Support.Bracketed ? (int)figures.Brackets<Plain>().Value : null;
        return new PostPlan(
            post.Index + 1, post.Kind, Nm(post.StationNm), new Length(east), new Length(north), post.Spec.Spec.Id, post.Section.Id,
            new Slope(post.Grade), L(above), L(diameter), L(depth), L(cut), L(figures.OrderLength<Plain>(cut.Value, null)),
            new Volume(concrete.Value), new Volume(figures.Spoil<Plain>(diameter.Value, depth.Value).Value), (int)figures.Bags<Plain>(concrete.Value).Value, new Mass(figures.Mass<Plain>(cut.Value).Value),
            post.Kind == PostKind.Line ? spec.Ties.Count : 0, post.Support)
        {
            GroundHeight = post.Rise is null ? null : L(figures.GroundHeight<Plain>()),
            TopHeight = post.Rise is { } rise ? L(figures.TopHeight<Plain>(rise.Ground, above.Value)) : null,
            Brackets = brackets,
            Anchors = brackets is { } each ? (int)figures.Anchors<Plain>(each).Value : null,
        };
    }

    private static RunPlan Run(HungRun run, int index, int line, Chain chain, SpecPlan spec)
    {
        var f = new RunFigures(run, chain, line, index);
        var along = f.Along<Plain>().Value;
        var (start, finish) = (End(f, 0, spec), End(f, 1, spec));
        var top = f.Top<Plain>(along).Value;
        var rail = f.Rail<Plain>(top).Value;
        var pieces = f.RailPieces<Plain>(rail).Value;
        var fabric = f.Fabric<Plain>(top).Value;
        var take = f.RollTake<Plain>(fabric, start.Mismatch.Metres, finish.Mismatch.Metres).Value;
        return new RunPlan(
            index + 1, run.From, run.To, run.Run.Spec.Spec.Id, Nm(run.Run.Stretch.ToNm - run.Run.Stretch.FromNm), new Length(along),
            (int)f.Bays<Plain>(along).Value, new Length(f.LargestBay<Plain>().Value), new Length(rail), (int)pieces,
            (int)f.Sleeves<Plain>(pieces).Value, new Mass(f.RailMass<Plain>(rail).Value), new Length(f.Wire<Plain>(top).Value),
            new Length(fabric), new Length(take), (int)f.PicketsLow<Plain>(take, spec.AdvanceHigh.Metres).Value,
            (int)f.PicketsHigh<Plain>(take, spec.AdvanceLow.Metres).Value, (int)f.RailTies<Plain>(fabric, spec.TieSpace.Metres).Value,
            (int)f.Rings<Plain>(fabric, spec.RingSpace.Metres).Value, BayPieces(f), new Length(f.Strand<Plain>(top).Value), (int)f.Seam<Plain>(fabric, spec.RingSpace.Metres).Value,
            (int)f.Slats<Plain>(fabric).Value, (int)f.ScreenTies<Plain>(fabric).Value, (int)f.ConcertinaTies<Plain>(along).Value,
            start, finish)
        {
            Top = new Length(top),
            Telescoping = L(f.Telescoping<Plain>()),
            Fitted = [.. run.Fitted.Select(Bay)],
        };
    }

    private static List<Length> BayPieces(RunFigures f)
        => f.Spec.BayRails == 0 ? [] : [.. Enumerable.Range(0, f.Run.Run.Bays).Select(i => new Length(f.BayPiece<Plain>(i).Value))];

    private static EndPlan End(RunFigures f, int end, SpecPlan spec)
    {
        var rules = f.Spec.Rules;
        var bar = f.Bar<Plain>(end).Value;
        var bands = (int)f.Bands<Plain>(end, bar).Value;
        var mismatch = f.Mismatch<Plain>(end).Value;
        var columns = (int)f.Columns<Plain>(end, mismatch, spec.AdvanceLow.Metres, spec.AdvanceHigh.Metres).Value;
        return new EndPlan(
            new Slope(f.RiseTowards(end)), new Length(f.BraceRail<Plain>(end).Value), new Length(bar), bands,
            bands == 0 ? new FasteningSet([], 0) : Fastening.Positions(f.Spec, bands, rules.BandMax), new Length(mismatch),
            (int)f.ColumnsAt<Plain>(end, mismatch, FactKind.AdvanceHigh, spec.AdvanceHigh.Metres).Value, columns,
            (int)f.ColumnsAt<Plain>(end, mismatch, FactKind.AdvanceLow, spec.AdvanceLow.Metres).Value,
            Bias.Crossings(columns, spec.WholeRows), columns == 0 ? LongEdge.None : Bias.Edge(f.RiseTowards(end)));
    }

    private static GatePlan Gate(SiteGate gate, HungLine line)
    {
        var (from, to) = GateFigures.Posts(gate, line);
        var centres = GateFigures.CentresNm(gate, line);
        var figures = new GateFigures(gate, line.Posts[from], line.Posts[to], centres) { Line = line.Site.Index };
        var opening = figures.Opening<Plain>().Value;
        var leaf = figures.Leaf<Plain>(opening);
        var slides = gate.Kind == GateKind.Cantilever;
        var tail = figures.Tail<Plain>(opening).Value;
        return new GatePlan(
            gate.Gate.Id, gate.Kind, from, to, Nm(line.Posts[from].StationNm) + line.Posts[from].Section.OutsideDiameter / 2, new Length(opening),
            Nm(centres), gate.Leaves, L(leaf), gate.Post.Id, gate.Kind == GateKind.Rolling ? L(GateFigures.Track<Plain>(opening, leaf.Value)) : null,
            gate.Gate.LeafMass is > 0 and var mass ? new Mass(mass) : null)
        {
            Roller = !slides ? null : gate.RunsBackToEnd ? to : from,
            Tail = slides ? new Length(tail) : null,
            SecondRoller = slides ? L(figures.SecondRoller<Plain>(tail)) : null,
        };
    }

    private static WorkPlan Work(SiteTask task, int line, int index)
    {
        var f = new WorkFigures(task, line, index);
        var along = f.Along<Plain>().Value;
        var posts = (int)f.Posts<Plain>(along).Value;
        return new WorkPlan(
            task.Id, task.Kind, Nm(task.FromNm), Nm(task.ToNm), new Length(along), posts, task.Pulled, new Area(f.Area<Plain>(along).Value),
            new Volume(f.OldConcrete<Plain>(posts).Value));
    }

    public static IReadOnlyList<TemporaryPlan> Temporary(Job job, Rules rules, ProblemList problems)
        => problems.HasErrors ? [] : [.. job.Temporary.Select((t, i) => Temporary(t, i, rules))];

    private static TemporaryPlan Temporary(TemporaryFence fence, int index, Rules rules)
    {
        var f = new TemporaryFigures(fence, rules, index);
        var panels = (int)f.Panels<Plain>().Value;
        var stands = (int)f.Stands<Plain>(panels).Value;
        return new TemporaryPlan(
            fence.Id, fence.Name, fence.Length, panels, stands, (int)f.Clamps<Plain>(stands).Value, (int)f.Ballast<Plain>(stands).Value);
    }

    private static Length L(Plain number) => new(number.Value);

    private static Length Nm(long nanometres) => Length.FromNanometres(nanometres);
}
