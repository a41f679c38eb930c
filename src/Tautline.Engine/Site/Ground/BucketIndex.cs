namespace Tautline.Engine.Site.Ground;

/// <summary>Finds things in plan: a grid of equal buckets over an extent, each with the numbers of the boxes that touch it.</summary>
internal sealed class BucketIndex
{
    private const int MostPerItem = 8;

    private readonly PlanBox extent;
    private readonly int columns;
    private readonly int rows;
    private readonly double width;
    private readonly double height;
    private readonly int[] starts;
    private readonly int[] items;

    /// <param name="extent">Of all boxes.</param>
    /// <param name="count">How many things there are.</param>
    /// <param name="boxOf">The box of each.</param>
    public BucketIndex(PlanBox extent, int count, Func<int, PlanBox> boxOf)
    {
        this.extent = extent;
        (columns, rows) = Shape(extent, count / 4.0 + 1);
        // Long boxes touch many buckets: then the buckets are made larger until memory stays in proportion.
        for (; ; (columns, rows) = ((columns + 1) / 2, (rows + 1) / 2))
        {
            (width, height) = (Size(extent.East - extent.West, columns), Size(extent.North - extent.South, rows));
            if (columns * rows == 1 || Entries(count, boxOf) <= (long)MostPerItem * count + 64) break;
        }
        starts = new int[columns * rows + 1];
        items = Fill(count, boxOf);
    }

    /// <summary>What may be at a place.</summary>
    public ReadOnlySpan<int> At(double east, double north) =>
        east >= extent.West && east <= extent.East && north >= extent.South && north <= extent.North ? Bucket(Column(east), Row(north)) : [];

    /// <summary>What may touch the straight way between two places; things may come more than once.</summary>
    public void Along(PathPoint a, PathPoint b, List<int> found)
    {
        found.Clear();
        var box = PlanBox.Of(new GroundPoint(a.East, a.North, 0), new(b.East, b.North, 0));
        if (box.East < extent.West || box.West > extent.East || box.North < extent.South || box.South > extent.North) return;
        for (int row = Row(box.South), last = Row(box.North); row <= last; row++)
        {
            var (west, east) = Within(a, b, box, extent.South + row * height, extent.South + (row + 1) * height);
            // One bucket more on either side makes up for rounding.
            for (int c = Math.Max(0, Column(west) - 1), end = Math.Min(columns - 1, Column(east) + 1); c <= end; c++)
                found.AddRange(Bucket(c, row));
        }
    }

    private static (int Columns, int Rows) Shape(PlanBox extent, double buckets)
    {
        var (wide, high) = (Math.Max(extent.East - extent.West, 1e-9), Math.Max(extent.North - extent.South, 1e-9));
        var side = Math.Sqrt(wide * high / buckets);
        return ((int)Math.Clamp(wide / side, 1, 2000), (int)Math.Clamp(high / side, 1, 2000));
    }

    private static double Size(double span, int parts) => Math.Max(span, 1e-9) / parts;

    /// <summary>The stretch in east of the part of a way that lies between two northings, widened a little.</summary>
    private (double West, double East) Within(PathPoint a, PathPoint b, PlanBox box, double south, double north)
    {
        if (box.North - box.South <= height) return (box.West, box.East);
        var perNorth = (b.East - a.East) / (b.North - a.North);
        var (low, high) = (Math.Max(south - height / 8, box.South), Math.Min(north + height / 8, box.North));
        var (first, second) = (a.East + (low - a.North) * perNorth, a.East + (high - a.North) * perNorth);
        return (Math.Min(first, second), Math.Max(first, second));
    }

    private ReadOnlySpan<int> Bucket(int column, int row)
    {
        var bucket = row * columns + column;
        return items.AsSpan(starts[bucket], starts[bucket + 1] - starts[bucket]);
    }

    private int Column(double east) => (int)Math.Clamp((east - extent.West) / width, 0, columns - 1);

    private int Row(double north) => (int)Math.Clamp((north - extent.South) / height, 0, rows - 1);

    private long Entries(int count, Func<int, PlanBox> boxOf)
    {
        var entries = 0L;
        for (var i = 0; i < count; i++)
        {
            var box = boxOf(i);
            entries += (long)(Column(box.East) - Column(box.West) + 1) * (Row(box.North) - Row(box.South) + 1);
        }
        return entries;
    }

    private int[] Fill(int count, Func<int, PlanBox> boxOf)
    {
        for (var i = 0; i < count; i++) Visit(boxOf(i), static (starts, bucket, _) => starts[bucket]++, i);
        var sum = 0;
        for (var b = 0; b < starts.Length; b++) starts[b] = sum += starts[b];
        var filled = new int[sum];
        // Counted down from each bucket's end, starts end up where they belong.
        for (var i = count - 1; i >= 0; i--) Visit(boxOf(i), (at, bucket, item) => filled[--at[bucket]] = item, i);
        return filled;
    }

    private void Visit(PlanBox box, Action<int[], int, int> act, int item)
    {
        var (west, east) = (Column(box.West), Column(box.East));
        for (int row = Row(box.South), last = Row(box.North); row <= last; row++)
            for (var column = west; column <= east; column++)
                act(starts, row * columns + column, item);
    }
}
