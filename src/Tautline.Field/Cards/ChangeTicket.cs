using Tautline.Field.Log;

namespace Tautline.Field.Cards;

public enum ChangeFault
{
    Quantity,
    Unit,
    Price,
    Words,
    Signer,
    Signature,
}

/// <summary>A change as it is written at the hole.</summary>
/// <param name="UnitPrice">In whole money: 12.50.</param>
public sealed record ChangeTicket(decimal? Quantity, string Unit, decimal? UnitPrice, string Words, string Signer, IReadOnlyList<IReadOnlyList<int>> Strokes)
{
    /// <summary>More than any fence costs.</summary>
    private const decimal MostCents = 100_000_000_000;

    /// <summary>A signature has some length: a touch is none. Thousandths of the pad's width; chosen here, no source.</summary>
    private const int LeastInk = 100;

    public long? UnitCents => UnitPrice is { } price and >= 0 && Cents(price) is { } cents && cents == price * 100 ? cents : null;

    /// <summary>Rounded once; nothing while quantity or price is missing.</summary>
    public long? TotalCents => Quantity is { } quantity and > 0 and < 1_000_000 && UnitCents is { } cents ? Cents(quantity * cents / 100) : null;

    public IReadOnlyList<ChangeFault> Faults
    {
        get
        {
            List<ChangeFault> faults = [];
            if (Quantity is not (> 0 and < 1_000_000)) faults.Add(ChangeFault.Quantity);
            if (string.IsNullOrWhiteSpace(Unit)) faults.Add(ChangeFault.Unit);
            if (UnitCents is null || (Quantity is > 0 and < 1_000_000 && TotalCents is null)) faults.Add(ChangeFault.Price);
            if (string.IsNullOrWhiteSpace(Words)) faults.Add(ChangeFault.Words);
            if (string.IsNullOrWhiteSpace(Signer)) faults.Add(ChangeFault.Signer);
            if (Strokes.Sum(Ink) < LeastInk) faults.Add(ChangeFault.Signature);
            return faults;
        }
    }

    /// <summary>What goes into the log.</summary>
    /// <exception cref="InvalidOperationException">Something is still wrong with it: see <see cref="Faults"/>.</exception>
    public ChangeOrder Order() => Faults.Count > 0
        ? throw new InvalidOperationException($"The change is not complete: {string.Join(", ", Faults)}.")
        : new() { Quantity = Quantity!.Value, Unit = Unit.Trim(), UnitCents = UnitCents!.Value, TotalCents = TotalCents!.Value, Signer = Signer.Trim(), Strokes = Strokes };

    private static long? Cents(decimal money)
        => decimal.Round(money * 100, 0, MidpointRounding.AwayFromZero) is var cents and >= 0 and < MostCents ? (long)cents : null;

    private static int Ink(IReadOnlyList<int> stroke)
        => Enumerable.Range(1, Math.Max(0, stroke.Count / 2 - 1)).Sum(i => Math.Abs(stroke[2 * i] - stroke[2 * i - 2]) + Math.Abs(stroke[2 * i + 1] - stroke[2 * i - 1]));
}
