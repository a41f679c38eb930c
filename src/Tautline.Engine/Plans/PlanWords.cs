using System.Globalization;
using Tautline.Engine.Layout;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Plans;

/// <summary>Figures of a plan in words, in one system of units.</summary>
public sealed record PlanWords(UnitSystem Units)
{
    private bool Metric => Units == UnitSystem.Metric;

    public static string Kind(PostKind kind) => kind switch
    {
        PostKind.GradeBreak => "grade-break",
        PostKind.Tie => "standing",
        _ => kind.ToString().ToLowerInvariant(),
    };

    public static string Named(Support support) => support.ToString().ToLowerInvariant();

    /// <summary>Diameter and depth of a hole, or how the post is held without one.</summary>
    public string Held(PostPlan post) => post.Support switch
    {
        Support.Standing => "stands",
        Support.Plated => "plate",
        Support.Bracketed => $"{Count(post.Brackets ?? 0, "bracket")}, {Short(post.HoleDepth)} down",
        Support.Driven => $"driven {Short(post.HoleDepth)}",
        Support.Cored => $"core {Hole(post.HoleDiameter, post.HoleDepth)}",
        _ => Hole(post.HoleDiameter, post.HoleDepth),
    };

    /// <summary>Along the fence: feet and inches, or metres.</summary>
    public string Long(Length length) => LengthText.Show(length, Units);

    /// <summary>A size: inches and fractions, or millimetres.</summary>
    public string Short(Length length) => Metric ? $"{Number(length.Metres * 1000, "0")} mm" : LengthText.Inches(length, 16);

    /// <summary>A height over the datum: decimals of a foot or metre, as surveys state it.</summary>
    public string Height(double metres) => Metric ? $"{Number(metres, "#,0.000")} m" : $"{Number(new Length(metres).Feet, "#,0.00")} ft";

    /// <summary>A small length that may lie below zero.</summary>
    public string Signed(Length length) => length.Metres < -1e-9 ? $"-{Short(Length.Abs(length))}" : Short(Length.Max(length, Length.Zero));

    public string Station(Length length) => StationText.Format(length, Units, 2);

    public string Volume(Volume volume)
        => Metric ? $"{Number(volume.CubicMetres, "0.000")} cu m" : $"{Number(volume.CubicFeet, "0.00")} cu ft";

    public string Area(Area area)
        => Metric ? $"{Number(area.SquareMetres, "0.00")} sq m" : $"{Number(area.SquareFeet, "#,0.0")} sq ft";

    /// <summary>What a crew paints on the stake of a post: a letter for the line and the post's number, 'A12'. I and O are left out.</summary>
    /// <param name="line">Index of the line in the plan.</param>
    public static string Mark(int line, PostPlan post) => Mark(line, post.Number);

    /// <param name="number">Of the post, from 1.</param>
    public static string Mark(int line, int number)
    {
        const string letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
        var text = "";
        for (var rest = line; rest >= 0; rest = rest / letters.Length - 1) text = letters[rest % letters.Length] + text;
        return string.Create(CultureInfo.InvariantCulture, $"{text}{number}");
    }

    /// <summary>A piece of work in words: 'old fence out, 80' 0", 9 posts pulled'.</summary>
    public string Work(WorkPlan work) => work.Kind switch
    {
        WorkKind.Removal => $"old fence out, {Long(work.Along)}, {Count(work.Posts, "post")} {(work.Pulled ? "pulled" : "cut at the ground")}",
        WorkKind.Clearing => $"ground cleared, {Area(work.Area)}",
        var dip => $"{dip.ToString().ToLowerInvariant()} closed, an opening of {Area(work.Area)}",
    };

    /// <summary>A stretch of ground in words: 'too high by up to 4 in, 0.12 yd3 to cut'.</summary>
    public string Grading(GradingPlan grading)
    {
        var what = (grading.Remedy, grading.TooHigh) switch
        {
            (Remedies.Grading, true) => $"{Volume(grading.Volume)} to cut",
            (Remedies.Grading, false) => $"{Volume(grading.Volume)} to fill",
            (Remedies.TrimOrBury, _) => "trim or bury the bottom",
            (Remedies.ClosurePiece, _) => $"close an opening of {Area(grading.Area)}",
            _ => "no remedy is allowed",
        };
        return $"{(grading.TooHigh ? "too high" : "too low")} by up to {Short(grading.Depth)}, {what}";
    }

    public string Mass(Mass mass) => Metric ? $"{Number(mass.Kilograms, "#,0.0")} kg" : $"{Number(mass.Pounds, "#,0.0")} lb";

    public string Hole(Length diameter, Length depth)
        => Metric ? $"{Number(diameter.Metres * 1000, "0")} x {Number(depth.Metres * 1000, "0")} mm" : $"{Bare(diameter)} x {Bare(depth)} in";

    public static string Range(int low, int high) => low == high ? $"{low}" : $"{low} to {high}";

    /// <summary>'1 post', '2 posts'.</summary>
    public static string Count(int count, string one)
        => string.Create(CultureInfo.InvariantCulture, $"{count} {one}{(count == 1 ? "" : "s")}");

    public string Net(TakeoffLine line) => line.NetUnit switch
    {
        QuantityUnit.Length => Long(new Length(line.Net)),
        QuantityUnit.Volume => Volume(new Volume(line.Net)),
        QuantityUnit.Area => Area(new Area(line.Net)),
        _ => Number(line.Net, "#,0"),
    };

    public static string Purchase(TakeoffLine line) => line.PurchaseUnit == PurchaseUnit.AsMeasured ? "as measured" : line.PurchaseUnit == PurchaseUnit.Each
        ? Number(line.Purchase, "#,0")
        : $"{Number(line.Purchase, "#,0")} {line.PurchaseUnit.ToString().ToLowerInvariant()}{(line.Purchase == 1 ? "" : "s")}";

    /// <summary>Size and section of what is bought.</summary>
    public string Size(TakeoffLine line)
    {
        var size = line.Size is not { } length ? "" : line.Part == "tension-bar" ? Short(length) : Long(length);
        return string.Join(", ", new[] { line.Section, size, line.Finish, line.Spec is { } spec ? $"spec {spec.Value}" : null }.Where(p => !string.IsNullOrEmpty(p)));
    }

    /// <summary>What a spec of the plan is made of, in one sentence without its stop.</summary>
    public string Made(SpecPlan spec, Plan plan)
    {
        var asked = plan.Basis.Specs.First(s => s.Spec.Id == spec.Id);
        var frame = spec.TopRail ? $"top rail {spec.Rail}" : "top tension wire, no top rail";
        return $"{Long(spec.Height)} fabric{(asked.CutFrom is { } woven ? $" trimmed from {Long(woven.Height)}" : "")}, {Short(asked.Fabric.Mesh)} mesh, {asked.Fabric.Gauge} gauge; line posts {spec.LinePost}, "
               + $"terminals {spec.TerminalPost}, {frame}, {(spec.BottomWire ? "bottom tension wire" : "no bottom wire")}, "
               + (spec.Braced ? "terminals braced" : "no braces") + $", selvage {asked.Selvage}" + (asked.Finish is { } finish ? $", {finish}" : "");
    }

    /// <summary>What stands beside a take-off line: the other count of bags, what is left of the rolls, what to verify.</summary>
    public string Remarks(TakeoffLine line)
    {
        List<string> remarks = [];
        if (line.BagsByTotal is { } bags) remarks.Add($"{bags} by total volume");
        if (line.Left is { } left) remarks.Add($"{Long(left)} left over");
        if (line.CutOffs is { } cut) remarks.Add($"{Long(cut)} cut off in all");
        if (line.Spare is > 0) remarks.Add($"{Number(line.Spare.Value, "#,0")} more as spares");
        if (line.Verify) remarks.Add("verify");
        return string.Join("; ", remarks);
    }

    public static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static string Bare(Length length) => LengthText.Inches(length, 16).Replace(" in", "", StringComparison.Ordinal).TrimEnd('"');
}
