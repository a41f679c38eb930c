using System.Globalization;
using System.Text;
using Tautline.Documents.Scenes;
using Tautline.Engine.Quantities;

namespace Tautline.Papers.Drawings;

/// <summary>
/// Writes a scene as DXF of release 2000 (AC1015; group codes after the DXF Reference): lines, polylines, circles, arcs and texts in one layer for each role, in true
/// coordinates and in the job's unit ($INSUNITS). Hatches are told by their layer; what is only there for a pointer is left out. The same scene gives the same bytes.
/// </summary>
public static class DxfWriter
{
    private const double Foot = 0.3048;

    /// <exception cref="ArgumentException">The scene is no drawing to scale.</exception>
    public static byte[] Write(Scene scene, UnitSystem units)
    {
        if (scene.UnitsPerMetre <= 0) throw new ArgumentException("Only a drawing to scale has true coordinates.", nameof(scene));
        return Encoding.UTF8.GetBytes(new File(scene, units == UnitSystem.Metric ? 1 : 1 / Foot, units == UnitSystem.Metric ? 6 : 2).Text());
    }

    /// <summary>The layer of a role, in words of the trade.</summary>
    public static string Layer(SceneRole role) => role switch
    {
        SceneRole.Leg => "FENCE-LINE",
        SceneRole.Post or SceneRole.PostTop or SceneRole.Terminal or SceneRole.Step or SceneRole.Pipe => "FENCE-POST",
        SceneRole.Rail or SceneRole.Bar => "FENCE-RAIL",
        SceneRole.Fabric or SceneRole.FabricEdge => "FENCE-FABRIC",
        SceneRole.Gate => "FENCE-GATE",
        SceneRole.Swing or SceneRole.Hidden => "FENCE-GATE-OPEN",
        SceneRole.Ground or SceneRole.Earth => "GROUND",
        SceneRole.Cut => "GRADING-CUT",
        SceneRole.Fill => "GRADING-FILL",
        SceneRole.Hole or SceneRole.Concrete => "FOOTING",
        SceneRole.Zone => "ZONE",
        SceneRole.Drop => "ROLL-DROP",
        SceneRole.Pull or SceneRole.Splice => "PULL",
        SceneRole.Dimension or SceneRole.Axis or SceneRole.Grid => "DIMENSION",
        SceneRole.Warning or SceneRole.Error => "PROBLEM",
        _ => "TEXT",
    };

    private sealed class File(Scene scene, double perMetre, int insertUnits)
    {
        private static readonly string[] lineTypes = ["ByBlock", "ByLayer", "Continuous"];

        private readonly StringBuilder text = new();
        private int handle = 0x30;

        private List<SceneItem> Items { get; } = [.. scene.Items.Where(i => i.Role != SceneRole.Hit)];

        public string Text()
        {
            List<string> layers = [.. Items.Select(i => Layer(i.Role)).Distinct().Order(StringComparer.Ordinal)];
            // The last handle is only known once all is written: entities first.
            foreach (SceneItem item in Items) Item(item);
            string entities = text.ToString();
            text.Clear();
            Header();
            Section("CLASSES");
            End();
            Tables(layers);
            Blocks();
            Section("ENTITIES");
            text.Append(entities);
            End();
            Objects();
            G(0, "EOF");
            return text.ToString();
        }

        private double X(double x) => ((scene.Origin?.X ?? 0) + (x / scene.UnitsPerMetre)) * perMetre;

        private double Y(double y) => ((scene.Origin?.Y ?? 0) - (y / scene.UnitsPerMetre / scene.Exaggeration)) * perMetre;

        private double Long(double points) => points / scene.UnitsPerMetre * perMetre;

        private void Item(SceneItem item)
        {
            switch (item)
            {
                case SceneItem.Path { Points.Count: >= 4 } path:
                    Entity("LWPOLYLINE", "AcDbPolyline", item.Role);
                    G(90, path.Points.Count / 2);
                    G(70, path.Closed ? 1 : 0);
                    for (int i = 0; i + 1 < path.Points.Count; i += 2)
                    {
                        G(10, X(path.Points[i]));
                        G(20, Y(path.Points[i + 1]));
                    }

                    break;
                case SceneItem.Circle circle:
                    Entity("CIRCLE", "AcDbCircle", item.Role);
                    Place(circle.X, circle.Y);
                    G(40, Long(circle.Radius));
                    break;
                case SceneItem.Arc arc:
                    Entity("ARC", "AcDbCircle", item.Role);
                    Place(arc.X, arc.Y);
                    G(40, Long(arc.Radius));
                    G(100, "AcDbArc");
                    // DXF turns against the clock from the way to the right.
                    G(50, Turn(-(arc.From + arc.Sweep)));
                    G(51, Turn(-arc.From));
                    break;
                case SceneItem.Text words when words.Words.Length > 0:
                    Entity("TEXT", "AcDbText", item.Role);
                    Place(words.X, words.Y);
                    G(40, Long(words.Size * 0.72));
                    G(1, Plain(words.Words));
                    G(50, Turn(-words.Angle));
                    G(72, words.Anchor switch { TextAnchor.Middle => 1, TextAnchor.End => 2, _ => 0 });
                    if (words.Anchor != TextAnchor.Start)
                    {
                        G(11, X(words.X));
                        G(21, Y(words.Y));
                        G(31, 0.0);
                    }

                    G(100, "AcDbText");
                    break;
            }
        }

        private static double Turn(double degrees) => ((degrees % 360) + 360) % 360;

        private void Place(double x, double y)
        {
            G(10, X(x));
            G(20, Y(y));
            G(30, 0.0);
        }

        private void Entity(string name, string kind, SceneRole role)
        {
            G(0, name);
            G(5, handle++.ToString("X", CultureInfo.InvariantCulture));
            G(330, "1F");
            G(100, "AcDbEntity");
            G(8, Layer(role));
            G(100, kind);
        }

        private void Header()
        {
            Section("HEADER");
            Variable("$ACADVER", 1, "AC1015");
            Variable("$DWGCODEPAGE", 3, "ANSI_1252");
            Variable("$HANDSEED", 5, (handle + 1).ToString("X", CultureInfo.InvariantCulture));
            G(9, "$INSUNITS");
            G(70, insertUnits);
            G(9, "$MEASUREMENT");
            G(70, insertUnits == 6 ? 1 : 0);
            Corner("$EXTMIN", X(0), Y(scene.Height));
            Corner("$EXTMAX", X(scene.Width), Y(0));
            End();
        }

        private void Variable(string name, int code, string value)
        {
            G(9, name);
            G(code, value);
        }

        private void Corner(string name, double x, double y)
        {
            G(9, name);
            G(10, x);
            G(20, y);
            G(30, 0.0);
        }

        private void Tables(List<string> layers)
        {
            Section("TABLES");
            Table("VPORT", "8", 0);
            EndTable();
            Table("LTYPE", "5", 3);
            foreach ((int i, string name) in lineTypes.Index())
            {
                Record("LTYPE", (0x14 + i).ToString("X", CultureInfo.InvariantCulture), "5", "AcDbLinetypeTableRecord", name);
                G(3, "");
                G(72, 65);
                G(73, 0);
                G(40, 0.0);
            }

            EndTable();
            Table("LAYER", "2", layers.Count + 1);
            foreach ((int i, string name) in layers.Prepend("0").Index())
            {
                Record("LAYER", (0x100000 + i).ToString("X", CultureInfo.InvariantCulture), "2", "AcDbLayerTableRecord", name);
                G(62, 7);
                G(6, "Continuous");
                G(370, -3);
                G(390, "F");
            }

            EndTable();
            Table("STYLE", "3", 1);
            Record("STYLE", "11", "3", "AcDbTextStyleTableRecord", "Standard");
            G(40, 0.0);
            G(41, 1.0);
            G(50, 0.0);
            G(71, 0);
            G(42, 1.0);
            G(3, "txt");
            G(4, "");
            EndTable();
            Table("VIEW", "6", 0);
            EndTable();
            Table("UCS", "7", 0);
            EndTable();
            Table("APPID", "9", 1);
            Record("APPID", "12", "9", "AcDbRegAppTableRecord", "ACAD");
            EndTable();
            Table("DIMSTYLE", "A", 0);
            EndTable();
            Table("BLOCK_RECORD", "1", 2);
            foreach ((string name, string id) in new[] { ("*Model_Space", "1F"), ("*Paper_Space", "1B") })
            {
                G(0, "BLOCK_RECORD");
                G(5, id);
                G(330, "1");
                G(100, "AcDbSymbolTableRecord");
                G(100, "AcDbBlockTableRecord");
                G(2, name);
                G(340, "0");
            }

            EndTable();
            End();
        }

        private void Table(string name, string id, int count)
        {
            G(0, "TABLE");
            G(2, name);
            G(5, id);
            G(330, "0");
            G(100, "AcDbSymbolTable");
            G(70, count);
            if (name == "DIMSTYLE") G(100, "AcDbDimStyleTable");
        }

        private void Record(string kind, string id, string owner, string record, string name)
        {
            G(0, kind);
            G(5, id);
            G(330, owner);
            G(100, "AcDbSymbolTableRecord");
            G(100, record);
            G(2, name);
            G(70, 0);
        }

        private void EndTable() => G(0, "ENDTAB");

        private void Blocks()
        {
            Section("BLOCKS");
            foreach ((string name, string owner, string start, string end) in new[] { ("*Model_Space", "1F", "20", "21"), ("*Paper_Space", "1B", "1C", "1D") })
            {
                G(0, "BLOCK");
                G(5, start);
                G(330, owner);
                G(100, "AcDbEntity");
                G(8, "0");
                G(100, "AcDbBlockBegin");
                G(2, name);
                G(70, 0);
                G(10, 0.0);
                G(20, 0.0);
                G(30, 0.0);
                G(3, name);
                G(1, "");
                G(0, "ENDBLK");
                G(5, end);
                G(330, owner);
                G(100, "AcDbEntity");
                G(8, "0");
                G(100, "AcDbBlockEnd");
            }

            End();
        }

        private void Objects()
        {
            Section("OBJECTS");
            G(0, "DICTIONARY");
            G(5, "C");
            G(330, "0");
            G(100, "AcDbDictionary");
            G(281, 1);
            G(3, "ACAD_GROUP");
            G(350, "D");
            G(0, "DICTIONARY");
            G(5, "D");
            G(330, "C");
            G(100, "AcDbDictionary");
            G(281, 1);
            G(0, "ACDBPLACEHOLDER");
            G(5, "F");
            G(330, "C");
            End();
        }

        private void Section(string name)
        {
            G(0, "SECTION");
            G(2, name);
        }

        private void End() => G(0, "ENDSEC");

        /// <summary>Signs beyond ASCII in the escape that every release reads: \U+00BD for ½.</summary>
        private static string Plain(string words)
        {
            var plain = new StringBuilder();
            foreach (char sign in words)
            {
                if (sign is < ' ') plain.Append(' ');
                else if (sign < 127) plain.Append(sign);
                else plain.Append(CultureInfo.InvariantCulture, $"\\U+{(int)sign:X4}");
            }

            return plain.ToString();
        }

        private void G(int code, string value) => text.Append(CultureInfo.InvariantCulture, $"{code,3}\r\n{value}\r\n");

        private void G(int code, int value) => G(code, value.ToString(CultureInfo.InvariantCulture));

        private void G(int code, double value) => G(code, Math.Round(value, 6).ToString("0.0#####", CultureInfo.InvariantCulture));
    }
}
