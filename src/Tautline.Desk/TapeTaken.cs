using Tautline.Engine.Jobs;

namespace Tautline.Desk;

/// <summary>Puts what a tape book says into the job on the desk. What a book cannot say stays: the job's id, its ground, its stock.</summary>
public static class TapeTaken
{
    public static Job Into(Job before, Job book) => book with
    {
        Id = before.Id,
        Name = book.Name.Length > 0 ? book.Name : before.Name,
        Coordinates = book.Coordinates ?? before.Coordinates,
        Ground = book.Ground ?? before.Ground,
        Stock = book.Stock.Count > 0 ? book.Stock : before.Stock,
        Seen = book.Seen.Count > 0 ? book.Seen : before.Seen,
        Calibrations = book.Calibrations.Count > 0 ? book.Calibrations : before.Calibrations,
        Extra = before.Extra,
    };
}
