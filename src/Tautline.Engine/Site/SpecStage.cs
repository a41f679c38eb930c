using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Site;

/// <summary>Settles every spec of a job: fabric that is made, posts and rail from the catalogue, what is braced.</summary>
public static class SpecStage
{
    /// <summary>Settled specs in the job's order; one that cannot be settled is missing and told of.</summary>
    public static IReadOnlyList<ResolvedSpec> Resolve(Job job, FenceCatalog catalog, Rules rules, ProblemList problems)
    {
        CheckCalibrations(job, problems);
        List<ResolvedSpec> settled = [];
        for (var i = 0; i < job.Specs.Count; i++)
            if (Resolve(job, i, catalog, rules, problems) is { } spec) settled.Add(spec);
        return settled;
    }

    private static ResolvedSpec? Resolve(Job job, int index, FenceCatalog catalog, Rules rules, ProblemList problems)
    {
        var spec = job.Specs[index];
        var path = $"specs[{index}]";
        Choices(spec, path, problems);
        var height = SpecHeight.Fabric(spec, rules, path, problems);
        if (spec.Laced is < 1 or > 4) problems.Add(ProblemCode.SpecLaced, new($"{path}.laced"), spec.Laced.Value);
        var width = height / Math.Clamp(spec.Laced ?? 1, 1, 4);
        if (spec is { CutFrom: { } stock } && (stock <= width || spec.Laced is > 1)) problems.Add(ProblemCode.SpecTrim, new($"{path}.cutFrom"), stock, width);
        var woven = spec.CutFrom ?? width;
        var fabric = FabricOf(spec, woven, catalog, path, problems);
        var counted = fabric is null ? null : DiamondsOf(fabric, woven, catalog, path, problems);
        var diamonds = spec.CutFrom is null || counted is null ? counted : Trimmed(counted, width, path, problems);
        var posts = Posts(spec, height, catalog, rules, path, problems);
        var rail = Section(spec.RailSection, $"{path}.railSection", catalog, problems)
            ?? (rules.RailSize is { } size ? Pipe(size, $"{path}.railSection", catalog, problems) : catalog.FindPipe(catalog.RailDiameter));
        CheckRoll(spec, path, problems);
        SpecDress.Check(spec, height, path, problems);
        if (fabric is null || diamonds is null || posts is not var (line, terminal) || rail is null) return null;
        var resolved = new ResolvedSpec(
            index, spec, fabric, diamonds, line, terminal, rail, spec.Top == "rail", spec.Bottom == "wire",
            Braced(spec, height, rules, path, problems), job.Calibrations.FirstOrDefault(c => c.Spec == spec.Id), rules)
        {
            Height = height,
            CutFrom = spec.CutFrom is null ? null : counted,
        };
        CheckCalibration(resolved, job, problems);
        return resolved;
    }

    private static void Choices(Spec spec, string path, ProblemList problems)
    {
        Choice(spec.Selvage, $"{path}.selvage", problems, "KK", "KT", "TK", "TT");
        Choice(spec.Coating, $"{path}.coating", problems, "zinc", "aluminum", "polymer");
        Choice(spec.Colour, $"{path}.colour", problems, "green", "olive-green", "brown", "black");
        Choice(spec.Slats?.Lock, $"{path}.slats.lock", problems, "top", "bottom");
        Choice(spec.Top, $"{path}.top", problems, "rail", "wire");
        Choice(spec.Bottom, $"{path}.bottom", problems, "wire", "rail", "none");
        Choice(spec.Middle, $"{path}.middle", problems, "rail");
        Choice(spec.Brace, $"{path}.brace", problems, "yes", "no");
        Choice(spec.LineSupport, $"{path}.lineSupport", problems, "concrete", "driven", "cored", "plated");
        Choice(spec.TerminalSupport, $"{path}.terminalSupport", problems, "concrete", "cored", "plated");
        Choice(spec.Barb?.Lean, $"{path}.barb.lean", problems, "left", "right", "up", "both");
        Choice(spec.Barb?.HeightIs, $"{path}.barb.heightIs", problems, "fabric", "overall");
    }

    /// <summary>A choice that is left out is fine.</summary>
    internal static void Choice(string? found, string path, ProblemList problems, params string[] choices)
    {
        if (found is not null && !choices.Contains(found))
            problems.Add(ProblemCode.SpecChoice, new(path), found, string.Join(" or ", choices.Select(c => $"\"{c}\"")));
    }

    private static FabricRow? FabricOf(Spec spec, Length height, FenceCatalog catalog, string path, ProblemList problems)
    {
        var mesh = spec.Mesh ?? Length.FromInches(2);
        if (catalog.FindFabric(mesh, spec.Gauge) is not { } fabric)
        {
            var listed = string.Join(", ", catalog.Fabrics.Select(f => $"{LengthText.Inches(f.Mesh, 8)} {f.Gauge} ga"));
            problems.Add(ProblemCode.SpecFabric, new($"{path}.mesh"), mesh, spec.Gauge, listed);
            return null;
        }
        if (fabric.Heights.Any(h => h.Nanometres == height.Nanometres)) return fabric;
        var heights = string.Join(", ", fabric.Heights.Select(h => LengthText.Inches(h, 2)));
        problems.Add(ProblemCode.SpecHeight, new($"{path}.height"), $"{LengthText.Inches(mesh, 8)} {spec.Gauge}-ga", height, heights);
        return null;
    }

    private static DiamondRow? DiamondsOf(FabricRow fabric, Length height, FenceCatalog catalog, string path, ProblemList problems)
    {
        var row = catalog.FindDiamonds(fabric.Mesh, height);
        if (row is null) problems.Add(ProblemCode.SpecDiamonds, new($"{path}.mesh"), fabric.Mesh, height);
        return row;
    }

    /// <summary>What is left of a fabric when as many whole diamonds come off as bring it nearest to a height.</summary>
    private static DiamondRow? Trimmed(DiamondRow woven, Length width, string path, ProblemList problems)
    {
        var diamond = woven.Height / woven.Diamonds;
        var off = Math.Round((woven.Height - width) / diamond);
        if (off < 1 || off > woven.Diamonds - 4)
        {
            problems.Add(ProblemCode.SpecTrimCount, new($"{path}.cutFrom"), woven.Height, width, diamond);
            return null;
        }
        problems.Add(ProblemCode.SpecTrimmed, new($"{path}.cutFrom"), woven.Height, (int)off, woven.Height - off * diamond);
        return new DiamondRow(
            woven.Mesh, width, woven.Diamonds - off, woven.From with { Clause = $"{woven.From.Clause}, less what is trimmed off", Confidence = Confidence.Calculated });
    }

    /// <summary>Each post as the spec names it, else by the rule set's own size for the height, else the catalogue's usual one.</summary>
    private static (Section Line, Section Terminal)? Posts(
        Spec spec, Length height, FenceCatalog catalog, Rules rules, string path, ProblemList problems)
    {
        var usual = catalog.PostSizes.FirstOrDefault(p => height.Nanometres <= p.HeightTo.Nanometres);
        var (lineRule, terminalRule) = (rules.At("post.lineSize", height), rules.At("post.terminalSize", height));
        var line = Post(spec.LinePost, lineRule, usual?.LinePost, $"{path}.linePost", catalog, problems);
        var terminal = Post(spec.TerminalPost, terminalRule, usual?.TerminalPost, $"{path}.terminalPost", catalog, problems);
        if (usual is null && ((spec.LinePost is null && lineRule is null) || (spec.TerminalPost is null && terminalRule is null)))
            problems.Add(ProblemCode.SpecPostSize, new($"{path}.height"), height);
        return line is null || terminal is null ? null : (line, terminal);
    }

    private static Section? Post(string? named, Limit? rule, Length? usual, string path, FenceCatalog catalog, ProblemList problems)
        => named is not null ? Section(named, path, catalog, problems)
            : rule is not null ? Pipe(rule, path, catalog, problems)
            : usual is { } size ? catalog.FindPipe(size)
            : null;

    private static Section? Pipe(Limit size, string path, FenceCatalog catalog, ProblemList problems)
    {
        var pipe = catalog.FindPipe(size.Length);
        if (pipe is null) problems.Add(ProblemCode.RulePipe, new(path), size.Key, size.Length);
        return pipe;
    }

    private static Section? Section(string? id, string path, FenceCatalog catalog, ProblemList problems)
    {
        if (id is null) return null;
        var section = catalog.FindSection(id);
        if (section is null) problems.Add(ProblemCode.SpecSection, new(path), id);
        return section;
    }

    private static void CheckRoll(Spec spec, string path, ProblemList problems)
    {
        if (spec.Roll is { } roll && !(roll.Feet >= 10 - 1e-9 && roll.Feet <= 500 + 1e-9))
            problems.Add(ProblemCode.SpecRoll, new($"{path}.roll"), roll);
    }

    private static bool Braced(Spec spec, Length height, Rules rules, string path, ProblemList problems)
    {
        if (spec.Brace is not null) return spec.Brace == "yes";
        var (stands, limit) = (height.Nanometres, rules.BraceHeight.Length.Nanometres);
        if (spec.Top != "rail" || stands != limit) return spec.Top != "rail" || stands > limit;
        if (rules.BraceAtHeight is { } decided) return decided.Value > 0;
        problems.Add(ProblemCode.BraceQuestion, new($"{path}.brace"), height);
        return false;
    }

    private static void CheckCalibrations(Job job, ProblemList problems)
    {
        for (var i = 0; i < job.Calibrations.Count; i++)
            if (job.Specs.All(s => s.Id != job.Calibrations[i].Spec))
                problems.Add(
                    ProblemCode.CalibrationSpec, new($"calibrations[{i}].spec"), job.Calibrations[i].Spec.Value,
                    string.Join(", ", job.Specs.Select(s => s.Id.Value)));
    }

    private static void CheckCalibration(ResolvedSpec spec, Job job, ProblemList problems)
    {
        if (spec.Calibration is not { } calibration) return;
        var (low, high) = MeshFormulas.TenPickets(spec);
        if (calibration.TenPickets >= low && calibration.TenPickets <= high) return;
        var at = job.Calibrations.Select((c, i) => (c, i)).First(p => ReferenceEquals(p.c, calibration)).i;
        problems.Add(
            ProblemCode.CalibrationRange, new($"calibrations[{at}].tenPickets"), calibration.TenPickets, low, high);
    }
}
