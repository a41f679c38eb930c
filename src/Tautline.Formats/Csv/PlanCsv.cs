using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Takeoff;

namespace Tautline.Formats.Csv;

/// <summary>Tables of a plan for spreadsheets. Every number's unit stands in the head of its column.</summary>
public static class PlanCsv
{
    public static string Write(Plan plan, CsvTable table, QuantitiesBy by, UnitSystem units)
    {
        var csv = new CsvText();
        var measure = CsvUnits.Of(units);
        switch (table)
        {
            case CsvTable.Posts: Posts(csv, plan, measure); break;
            case CsvTable.Runs: Runs(csv, plan, measure); break;
            case CsvTable.Quantities: Quantities(csv, plan, by, measure); break;
            default: Takeoff(csv, plan, measure); break;
        }
        return csv.ToString();
    }

    private static void Takeoff(CsvText csv, Plan plan, CsvUnits u)
    {
        csv.Row(
            "number", "part", "name", "section", $"size_{u.Short}", "spec", "net", "net_unit", "purchase", "purchase_unit", $"mass_{u.Mass}",
            "bags_by_total", $"left_{u.Long}", "finish", "spare", "verify", $"cut_off_{u.Long}");
        foreach (var t in plan.Takeoff)
        {
            var (net, unit) = Net(t, u);
            csv.Row(
                t.Number, t.Part, t.Name, t.Section, t.Size is { } size ? u.InShort(size) : null, t.Spec?.Value, net, unit, t.Purchase,
                PurchaseUnitName(t.PurchaseUnit), t.Mass is { } mass ? u.InMass(mass) : null, t.BagsByTotal,
                t.Left is { } left ? u.InLong(left) : null, t.Finish, t.Spare, t.Verify, t.CutOffs is { } cut ? u.InLong(cut) : null);
        }
    }

    private static void Quantities(CsvText csv, Plan plan, QuantitiesBy by, CsvUnits u)
    {
        csv.Row("place", "line", "run", "temporary", "number", "part", "name", "section", $"size_{u.Short}", "spec", "finish", "net", "net_unit");
        foreach (var row in Places.Rows(plan, by))
        {
            var item = Places.Item(plan, row);
            var (net, unit) = Net(item, u);
            csv.Row(
                Places.Kind(row.Place), Places.Line(plan, row.Place), Places.Run(plan, row.Place), Places.Temporary(plan, row.Place), item.Number,
                item.Part, item.Name, item.Section, item.Size is { } size ? u.InShort(size) : null, item.Spec?.Value, item.Finish, net, unit);
        }
    }

    private static string PurchaseUnitName(PurchaseUnit unit) => unit == PurchaseUnit.AsMeasured ? "as measured" : unit.ToString().ToLowerInvariant();

    private static (double Net, string Unit) Net(TakeoffLine line, CsvUnits u) => line.NetUnit switch
    {
        QuantityUnit.Length => (u.InLong(new Length(line.Net)), u.Long),
        QuantityUnit.Volume => (u.InVolume(new Volume(line.Net)), u.Volume),
        QuantityUnit.Area => (u.InArea(new Area(line.Net)), u.Area),
        _ => (line.Net, "each"),
    };

    private static void Posts(CsvText csv, Plan plan, CsvUnits u)
    {
        csv.Row(
            "line", "number", "kind", $"station_{u.Long}", $"east_{u.Long}", $"north_{u.Long}", "spec", "section", "grade_percent",
            $"above_ground_{u.Short}", $"hole_diameter_{u.Short}", $"hole_depth_{u.Short}", $"cut_length_{u.Short}", $"order_length_{u.Short}",
            $"concrete_{u.Volume}", "bags", $"mass_{u.Mass}", "ties", "support", $"cut_off_{u.Short}");
        foreach (var line in plan.Lines)
            foreach (var p in line.Posts)
                csv.Row(
                    line.Id, p.Number, PlanWords.Kind(p.Kind), u.InLong(p.Station), u.InLong(p.East), u.InLong(p.North), p.Spec, p.Section,
                    p.Grade.Percent, u.InShort(p.AboveGround), u.InShort(p.HoleDiameter), u.InShort(p.HoleDepth), u.InShort(p.CutLength),
                    u.InShort(p.OrderLength), u.InVolume(p.Concrete), p.Bags, u.InMass(p.Mass), p.Ties, PlanWords.Named(p.Support), p.CutOff is { } cut ? u.InShort(cut) : null);
    }

    private static void Runs(CsvText csv, Plan plan, CsvUnits u)
    {
        csv.Row(
            "line", "number", "from_post", "to_post", "spec", $"level_{u.Long}", $"along_{u.Long}", "bays", $"largest_bay_{u.Long}",
            $"rail_{u.Long}", "rail_pieces", "sleeves", $"wire_{u.Long}", $"fabric_{u.Long}", $"roll_take_{u.Long}", "pickets_low",
            "pickets_high", "rail_ties", "rings", $"start_brace_rail_{u.Long}", $"start_bar_{u.Short}", "start_bands", "start_columns",
            $"finish_brace_rail_{u.Long}", $"finish_bar_{u.Short}", "finish_bands", "finish_columns");
        foreach (var line in plan.Lines)
            foreach (var r in line.Runs)
                csv.Row(
                    line.Id, r.Number, line.Posts[r.FromPost].Number, line.Posts[r.ToPost].Number, r.Spec, u.InLong(r.Level), u.InLong(r.Along),
                    r.Bays, u.InLong(r.LargestBay), u.InLong(r.Rail), r.RailPieces, r.Sleeves, u.InLong(r.Wire), u.InLong(r.Fabric),
                    u.InLong(r.RollTake), r.PicketsLow, r.PicketsHigh, r.RailTies, r.Rings, u.InLong(r.Start.BraceRail), u.InShort(r.Start.Bar),
                    r.Start.Bands, r.Start.Columns, u.InLong(r.Finish.BraceRail), u.InShort(r.Finish.Bar), r.Finish.Bands, r.Finish.Columns);
    }
}
