using System.Text;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Tautline.Cli.Terminal;

/// <summary>Text for people: headings, paragraphs and tables; plain and of fixed width unless it is for a terminal.</summary>
internal sealed class Paper
{
    private readonly StringBuilder text = new();
    private readonly IAnsiConsole console;
    private readonly Style bold;
    private readonly Style underlined;

    public Paper(bool terminal, bool colour, int width)
    {
        var styled = terminal && colour;
        (bold, underlined) = styled ? (new Style(decoration: Decoration.Bold), new Style(decoration: Decoration.Underline)) : (Style.Plain, Style.Plain);
        console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.Yes, // without it the library resets the colours of the real terminal, wherever the text goes
            ColorSystem = styled ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(new StringWriter(text)),
        });
        console.Profile.Width = terminal ? width : CliHost.PlainWidth;
        console.Profile.Capabilities.Unicode = terminal;
    }

    public static Paper For(CliHost host) => new(host.OutputIsTerminal, host.Colour, host.Width);

    /// <summary>For a file: never coloured.</summary>
    public static Paper Plain() => new(false, false, CliHost.PlainWidth);

    public void Heading(string words)
    {
        if (text.Length > 0) Line();
        console.Write(new Text(words + "\n", bold));
    }

    public void Line(string words = "") => console.Write(new Text(words + "\n"));

    /// <summary>Lines whose second parts stand below each other.</summary>
    public void Labelled(IEnumerable<(string Label, string Words)> lines, int indent = 2)
    {
        var grid = new Grid().AddColumn(new GridColumn { NoWrap = true, Padding = new Padding(indent, 0, 2, 0) }).AddColumn(new GridColumn { Padding = new Padding(0, 0, 0, 0) });
        foreach (var (label, words) in lines) grid.AddRow(new Text(label), new Text(words));
        console.Write(grid);
    }

    /// <summary>A table; a column whose name starts with '>' is set to the right.</summary>
    public void Table(IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        var grid = new Grid();
        foreach (var column in columns)
            grid.AddColumn(new GridColumn { Alignment = column.StartsWith('>') ? Justify.Right : Justify.Left, Padding = new Padding(2, 0, 0, 0) });
        grid.AddRow([.. columns.Select(IRenderable (c) => new Text(c.TrimStart('>'), underlined))]);
        foreach (var row in rows) grid.AddRow([.. row.Select(IRenderable (cell) => new Text(cell))]);
        console.Write(grid);
    }

    /// <summary>Everything written, without spaces at the ends of lines.</summary>
    public override string ToString()
        => string.Join('\n', text.ToString().ReplaceLineEndings("\n").Split('\n').Select(l => l.TrimEnd(' ')));
}
