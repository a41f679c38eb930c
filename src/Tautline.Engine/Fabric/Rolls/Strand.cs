namespace Tautline.Engine.Fabric.Rolls;

/// <summary>A piece of a roll in a pull at both ends of the advance's range.</summary>
/// <param name="Pull">Its place in the hanging order.</param>
/// <param name="Roll">Index among the rolls in the order they are opened.</param>
/// <param name="LowAt">Pickets of the pull before it at the widest advance; -1 where it is not there.</param>
internal sealed record Strand(int Pull, int Roll, PicketRange From, PicketRange To, int LowAt, int HighAt)
{
    public bool Certain => LowAt >= 0 && HighAt >= 0;

    public PicketRange Pickets => new(To.Low - From.Low, To.High - From.High);

    public static List<Strand> Of(KindHanging hanging, List<RollKey> keys)
    {
        var index = keys.Select((k, i) => (k, i)).ToDictionary(p => p.k, p => p.i);
        Dictionary<(int Pull, int Roll), Strand> all = new(hanging.High.Pieces.Count);
        foreach (var (piece, offset) in Offsets(hanging.High))
        {
            var key = (piece.Pull, index[hanging.High.Rolls[piece.Roll].Key]);
            all[key] = new Strand(key.Pull, key.Item2, new(0, piece.From), new(0, piece.To), -1, offset);
        }
        foreach (var (piece, offset) in Offsets(hanging.Low))
        {
            var key = (piece.Pull, index[hanging.Low.Rolls[piece.Roll].Key]);
            var known = all.GetValueOrDefault(key) ?? new Strand(key.Pull, key.Item2, default, default, -1, -1);
            all[key] = known with { From = new(piece.From, known.From.High), To = new(piece.To, known.To.High), LowAt = offset };
        }
        return [.. all.Values.OrderBy(s => s.Pull).ThenBy(s => s.Roll)];
    }

    private static IEnumerable<(HungPiece Piece, int Offset)> Offsets(Hung hung)
    {
        var (pull, offset) = (-1, 0);
        foreach (var piece in hung.Pieces)
        {
            if (piece.Pull != pull) (pull, offset) = (piece.Pull, 0);
            yield return (piece, offset);
            offset += piece.To - piece.From;
        }
    }
}
