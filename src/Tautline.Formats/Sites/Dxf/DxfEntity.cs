namespace Tautline.Formats.Sites.Dxf;

/// <summary>A group of an entity: a number, or a text.</summary>
internal readonly record struct DxfGroup(int Code, double Number, string? Text);

/// <summary>An entity as its groups, with the vertices or attributes that follow it.</summary>
internal sealed class DxfEntity(string type, int line)
{
    public string Type { get; } = type;

    /// <summary>Line of the file it begins at.</summary>
    public int Line { get; private set; } = line;

    public List<DxfGroup> Groups { get; } = [];

    public List<DxfEntity>? Parts { get; private set; }

    /// <summary>The same, empty again, for the next of its type: a drawing has hundreds of thousands of lines.</summary>
    public DxfEntity At(int line)
    {
        Groups.Clear();
        Line = line;
        return this;
    }

    public void Add(DxfEntity part) => (Parts ??= []).Add(part);

    /// <summary>The first number of a code.</summary>
    public double Number(int code, double otherwise = 0)
    {
        foreach (var group in Groups)
            if (group.Code == code) return group.Number;
        return otherwise;
    }

    public bool Has(int code)
    {
        foreach (var group in Groups)
            if (group.Code == code) return true;
        return false;
    }

    public string Text(int code)
    {
        foreach (var group in Groups)
            if (group.Code == code) return group.Text ?? "";
        return "";
    }

    /// <summary>Bits of a flag; 0 where it is no whole number.</summary>
    public int Flag(int code) => Number(code) is >= 0 and < 65536 and var flag ? (int)flag : 0;

    /// <summary>A place, or a direction, by the code of its x.</summary>
    public (double X, double Y, double Z) Place(int code) => (Number(code), Number(code + 10), Number(code + 20));

    public string Layer => Text(8);

    public bool InPaperSpace => Flag(67) == 1;

    public bool Invisible => Flag(60) == 1;
}

/// <summary>A block: what is drawn where it is inserted.</summary>
internal sealed class DxfBlock(string name)
{
    public string Name { get; } = name;

    public (double X, double Y, double Z) Base { get; set; }

    /// <summary>It is another file, which is not here.</summary>
    public bool Outside { get; set; }

    public List<DxfEntity> Entities { get; } = [];
}
