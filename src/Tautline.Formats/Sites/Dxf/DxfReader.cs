using System.Globalization;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Dxf;

/// <summary>
/// Reads ASCII drawings from R12 to 2018 (Autodesk's DXF Reference) in passing: what is held is the blocks and what was drawn. LINE, POLYLINE, LWPOLYLINE, ARC,
/// CIRCLE, ELLIPSE, SPLINE, POINT, INSERT, TEXT and MTEXT are read, everything else is counted.
/// </summary>
internal sealed class DxfReader
{
    private const int MostGroups = 5_000_000; // of one entity

    private static readonly (string Code, string Name)[] Versions =
    [
        ("AC1009", "R12"), ("AC1012", "R13"), ("AC1014", "R14"), ("AC1015", "2000"), ("AC1018", "2004"), ("AC1021", "2007"), ("AC1024", "2010"), ("AC1027", "2013"), ("AC1032", "2018"),
    ];

    private readonly SiteCollector _found;
    private readonly DxfPairs _pairs;
    private readonly Dictionary<string, DxfBlock> _blocks = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _hiddenLayers = new(StringComparer.OrdinalIgnoreCase);
    private readonly DxfShapes _shapes;
    private int _page = CodePages.Windows1252;
    private string _version = "";
    private bool _eof, _anySection, _geoData;
    private int _entities;

    private DxfReader(Stream stream, SiteCollector found)
    {
        (_found, _pairs) = (found, new(stream, found.Problems));
        _shapes = new(found, _blocks, _hiddenLayers);
    }

    public static void Read(Stream stream, SiteCollector found) => new DxfReader(stream, found).Read();

    private void Read()
    {
        _found.FormatName = "DXF";
        var more = _pairs.Next();
        while (more && !_eof)
        {
            if (_pairs.Code != 0 || !_pairs.Is("SECTION"u8))
            {
                _eof = _pairs.Code == 0 && _pairs.Is("EOF"u8);
                if (!_eof) more = _pairs.Next();
                continue;
            }
            _anySection = true;
            more = _pairs.Next() && Section();
        }
        if (!_anySection) throw new SiteStop(DxfFindings.NotDxf);
        if (!_eof) _found.Problems.AddAtLine(DxfFindings.NoEnd(_pairs.Line + 1), _pairs.Line + 1);
        if (_geoData) _found.Problems.Add(DxfFindings.GeoData);
        _shapes.Done();
        _found.DropZeroHeights();
    }

    /// <summary>Stands on the name of the section; ends on the pair behind it. False at the end of the file.</summary>
    private bool Section()
    {
        if (_pairs.Code != 2) return true;
        if (_pairs.Is("HEADER"u8)) return Header();
        if (_pairs.Is("TABLES"u8)) return Tables();
        if (_pairs.Is("BLOCKS"u8)) return Blocks();
        if (_pairs.Is("ENTITIES"u8)) return _pairs.Next() && Entities(_shapes.Draw, recycle: true);
        var objects = _pairs.Is("OBJECTS"u8);
        while (_pairs.Next())
        {
            if (_pairs.Code != 0) continue;
            if (_pairs.Is("ENDSEC"u8) || _pairs.Is("EOF"u8)) return true;
            _geoData |= objects && _pairs.Is("GEODATA"u8);
        }
        return false;
    }

    private bool Header()
    {
        var name = "";
        while (_pairs.Next())
        {
            if (_pairs.Code == 0) break;
            if (_pairs.Code == 9) name = Text();
            else Variable(name);
        }
        TellVersion();
        return true;
    }

    private void Variable(string name)
    {
        switch (name, _pairs.Code)
        {
            case ("$ACADVER", 1):
                _version = Text().ToUpperInvariant();
                // From 2007 on all text is UTF-8, whatever the code page says.
                if (string.CompareOrdinal(_version, "AC1021") >= 0) _page = CodePages.Utf8Page;
                break;
            case ("$DWGCODEPAGE", 3): CodePage(Text()); break;
            case ("$INSUNITS", 70): Unit(_pairs.Number()); break;
        }
    }

    private void CodePage(string name)
    {
        if (string.CompareOrdinal(_version, "AC1021") >= 0) return;
        if (CodePages.Find(name) is { } page) _page = page;
        else _found.Problems.Add(DxfFindings.CodePage(name));
    }

    private void TellVersion()
    {
        if (_version.Length == 0) return;
        var known = Array.Find(Versions, v => v.Code == _version);
        _found.FormatName = known.Code is null ? $"DXF {_version}" : $"DXF {_version} ({known.Name})";
        if (known.Code is null) _found.Problems.Add(DxfFindings.NotTested(_version));
    }

    // $INSUNITS, DXF Reference, HEADER section.
    private void Unit(double number)
    {
        var unit = number switch
        {
            1 => SiteUnit.Inch,
            2 => SiteUnit.Foot,
            3 => SiteUnit.Mile,
            4 => SiteUnit.Millimetre,
            5 => SiteUnit.Centimetre,
            6 => SiteUnit.Metre,
            7 => SiteUnit.Kilometre,
            10 => SiteUnit.Yard,
            14 => SiteUnit.Decimetre,
            21 => SiteUnit.SurveyFoot,
            _ => null,
        };
        var shown = number.ToString(CultureInfo.InvariantCulture);
        if (unit is null && number != 0) _found.Problems.Add(DxfFindings.UnitNotKnown(shown));
        _found.Claims = new() { Unit = unit, HeightUnit = unit, UnitText = $"$INSUNITS {shown}" };
    }

    private bool Tables()
    {
        var (type, name, flags, colour) = ("", "", 0.0, 1.0);
        while (_pairs.Next())
        {
            if (_pairs.Code == 0)
            {
                Layer();
                if (_pairs.Is("ENDSEC"u8) || _pairs.Is("EOF"u8)) return true;
                (type, name, flags, colour) = (Text(), "", 0, 1);
            }
            else if (type != "LAYER") continue;
            else if (_pairs.Code == 2) name = Text();
            else if (_pairs.Code == 70) flags = _pairs.Number();
            else if (_pairs.Code == 62) colour = _pairs.Number();
        }
        return false;

        // Flag 1 is frozen, a negative colour is off.
        void Layer()
        {
            if (type == "LAYER" && name.Length > 0 && (colour < 0 || flags is >= 0 and < 65536 && ((int)flags & 1) == 1)) _hiddenLayers.Add(name);
        }
    }

    private bool Blocks()
    {
        var more = _pairs.Next();
        while (more)
        {
            if (_pairs.Code == 0 && (_pairs.Is("ENDSEC"u8) || _pairs.Is("EOF"u8))) return true;
            more = _pairs.Code == 0 && _pairs.Is("BLOCK"u8) ? Block() : _pairs.Next();
        }
        return false;
    }

    private bool Block()
    {
        var (head, line) = (new DxfEntity("BLOCK", _pairs.Line), _pairs.Line);
        while (_pairs.Next() && _pairs.Code != 0) Take(head);
        var block = new DxfBlock(head.Text(2)) { Base = head.Place(10), Outside = (head.Flag(70) & 4) != 0 };
        if (!Entities(block.Entities.Add, recycle: false)) throw new SiteStop(DxfFindings.CutOff("block", line), _pairs.Line);
        _blocks.TryAdd(block.Name, block);
        return true;
    }

    /// <summary>Reads entities up to the end of a block or section, on which it ends. False at the end of the file.</summary>
    private bool Entities(Action<DxfEntity> use, bool recycle)
    {
        DxfEntity? owner = null, spare = null;
        while (true)
        {
            if (_pairs.Code != 0)
            {
                // Groups before the first entity belong to nothing.
                if (!_pairs.Next()) return AtEnd(owner, null, use);
                continue;
            }
            if (_pairs.Is("ENDSEC"u8) || _pairs.Is("ENDBLK"u8) || _pairs.Is("EOF"u8)) return Ended(owner, use);
            var type = _found.Shared(Text());
            var reads = DxfShapes.Reads(type);
            DxfEntity entity;
            if (recycle && spare is not null && spare.Type == type)
            {
                entity = spare.At(_pairs.Line);
                spare = null;
            }
            else entity = new(type, _pairs.Line);
            var more = _pairs.Next();
            for (; more && _pairs.Code != 0; more = _pairs.Next())
                if (reads || _pairs.Code is 8 or 67) Take(entity);
            Tick();
            if (!more) return AtEnd(owner, entity, use);
            if (type == "SEQEND")
            {
                if (owner is not null) use(owner);
                owner = null;
            }
            else if (owner is not null && type is "VERTEX" or "ATTRIB") owner?.Add(entity);
            else
            {
                if (owner is not null) Close(owner, use);
                owner = type == "POLYLINE" || (type == "INSERT" && entity.Flag(66) == 1) ? entity : null;
                if (owner is not null) continue;
                use(entity);
                if (entity.Parts is null) spare = entity;
            }
        }
    }

    private bool Ended(DxfEntity? owner, Action<DxfEntity> use)
    {
        if (owner is not null) Close(owner, use);
        return true;
    }

    private void Close(DxfEntity owner, Action<DxfEntity> use)
    {
        _found.Problems.AddAtLine(DxfFindings.NoSeqEnd, owner.Line);
        use(owner);
    }

    /// <summary>The file ends behind an entity that nothing closes: whether it is whole cannot be told, so nothing is used.</summary>
    private bool AtEnd(DxfEntity? owner, DxfEntity? entity, Action<DxfEntity> use)
    {
        if ((owner ?? entity) is not { } open || entity?.Type == "SEQEND") return Ended(null, use);
        throw new SiteStop(DxfFindings.CutOff(open.Type, open.Line), _pairs.Line);
    }

    private void Tick()
    {
        if ((++_entities & 0xFFF) != 0) return;
        _found.Options.Cancelled.ThrowIfCancellationRequested();
        _found.Options.Progress?.Invoke(_pairs.BytesRead);
    }

    private void Take(DxfEntity entity)
    {
        if (entity.Groups.Count >= MostGroups) throw new SiteStop(SiteFindings.TooMany(_found.Options.Limits), entity.Line);
        switch (_pairs.Code)
        {
            case 8 or 2: entity.Groups.Add(new(_pairs.Code, 0, _found.Shared(Text()))); break;
            case 1 or 3: entity.Groups.Add(new(_pairs.Code, 0, CodePages.Decode(_pairs.Raw, _page))); break;
            case >= 10 and <= 59 or 60 or 66 or 67 or (>= 70 and <= 79) or 90 or 91 or (>= 210 and <= 239): entity.Groups.Add(new(_pairs.Code, _pairs.Number(), null)); break;
        }
    }

    private string Text() => CodePages.Decode(_pairs.Value, _page);
}
