namespace Tautline.Papers.Paper.Layout;

/// <summary>Fills the pages of a sheet from the top down.</summary>
/// <param name="foot">Kept free at the bottom of every page, in points.</param>
/// <param name="again">What stands at the top of every page after the first.</param>
internal sealed class Pager(string sheet, PageFrame frame, double foot, IReadOnlyList<Strip> again)
{
    private List<Mark> marks = [];
    private List<PageBox> boxes = [];
    private double y = frame.Top;
    private double end = frame.Bottom - foot;
    private bool atTop = true;

    /// <summary>The pages that are full, and the one being filled.</summary>
    public List<LaidPage> Pages { get; } = [];

    public void Begin(IEnumerable<Strip> head, Mark.Code? corner, List<Strip> cautions, double pad)
    {
        Pages.Add(new(sheet, Pages.Count == 0, frame, marks, boxes));
        if (corner is not null) marks.Add(corner);
        double top = y;
        foreach (Strip strip in head) Put(strip);
        if (corner is { } code) y = Math.Max(y, code.Y + code.Size);
        boxes.Add(new("head", top, y - top));
        y += 3;
        Box(cautions, pad);
    }

    public void Add(List<Strip> strips)
    {
        for (int i = 0; i < strips.Count; i++)
        {
            if (strips[i].EndsPage)
            {
                if (!atTop && (!strips[i].OfFirst || Pages.Count == 1)) TurnPage();
                continue;
            }

            if (!atTop && y + Chain(strips, i) > end)
            {
                TurnPage();
                foreach (Strip head in strips[i].Repeat ?? []) Place(head);
                atTop = true;
            }

            if (atTop && strips[i].IsGap) continue;
            Place(strips[i]);
            atTop = false;
        }
    }

    private void Place(Strip strip)
    {
        if (strip.Height > 0) boxes.Add(new(strip.IsGap ? "gap" : "strip", y, strip.Height));
        Put(strip);
    }

    private void Put(Strip strip)
    {
        marks.AddRange(strip.Marks.Select(m => m.Down(y)));
        y += strip.Height;
    }

    /// <summary>The height of a strip with all that must not be parted from it.</summary>
    private static double Chain(List<Strip> strips, int from)
    {
        double height = strips[from].Height;
        for (int i = from; strips[i].HoldsNext && i + 1 < strips.Count; i++) height += strips[i + 1].Height;
        return height;
    }

    private void TurnPage()
    {
        (marks, boxes, y, end) = ([], [], frame.Top, frame.Bottom - foot);
        Pages.Add(new(sheet, Pages.Count == 0, frame, marks, boxes));
        foreach (Strip strip in again) Put(strip);
        boxes.Add(new("head", frame.Top, y - frame.Top));
        y += 3;
        atTop = true;
    }

    private void Box(List<Strip> cautions, double pad)
    {
        if (cautions.Count == 0) return;
        double height = cautions.Sum(c => c.Height) + (2 * pad);
        (double back, double top) = (y, end - height);
        y = top + pad;
        foreach (Strip strip in cautions) Put(strip);
        marks.Add(new Mark.Frame(frame.Left, top, frame.Width, height, 1));
        boxes.Add(new("cautions", top, height));
        (y, end) = (back, top - 4);
    }
}
