namespace Tautline.Formats.GeoJson;

/// <summary>An array of a "coordinates" member: a position, a list of positions, or a list of such lists.</summary>
internal sealed class CoordinateNode(int offset)
{
    private int _numbers;
    private double _x, _y;
    private double _z = double.NaN;
    private bool _notANumber, _notFinite;

    public int Offset { get; } = offset;
    public List<RawPosition>? Positions { get; private set; }
    public List<CoordinateNode>? Children { get; private set; }
    public bool IsPosition => _numbers > 0 || _notANumber;
    public bool IsEmpty => !IsPosition && Positions is null && Children is null;

    public void AddNumber(double value)
    {
        switch (_numbers++)
        {
            case 0: _x = value; break;
            case 1: _y = value; break;
            case 2: _z = value; break;
            default: return; // a fourth number has no agreed meaning
        }

        _notFinite |= !double.IsFinite(value);
    }

    public void AddOther() => _notANumber = true;

    public void Add(CoordinateNode child)
    {
        if (child.IsPosition) (Positions ??= []).Add(child.ToPosition());
        else (Children ??= []).Add(child);
    }

    /// <summary>The lists of positions that many levels down, or null when the nesting is another.</summary>
    public List<CoordinateNode>? Lists(int levels)
    {
        if (levels == 0) return IsPosition || Children is not null ? null : [this];
        if (IsPosition || Positions is not null) return null;
        List<CoordinateNode> all = [];
        foreach (var child in Children ?? [])
        {
            if (child.Lists(levels - 1) is not { } below) return null;
            all.AddRange(below);
        }

        return all;
    }

    public RawPosition ToPosition() => new(_x, _y, _z, Offset, Fault());

    private PositionFault Fault() =>
        _notANumber ? PositionFault.NotANumber
        : _numbers < 2 ? PositionFault.TooFewNumbers
        : _notFinite ? PositionFault.NotFinite
        : PositionFault.None;
}
