using System.Text;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>The text of a book while it is written, line by line.</summary>
internal sealed class TapePage(UnitSystem units, TapeProblems problems)
{
    private readonly StringBuilder text = new();
    private int line = 1;

    public string Text => text.ToString();

    public void Add(string statement)
    {
        text.Append(statement).Append('\n');
        line++;
    }

    public string Length(Length length) => TapeLength.Write(length, units);

    public string Point(Length length) => TapeLength.WritePoint(length, units);

    public string Inches(Length length) => TapeLength.WriteInches(length, units);

    /// <summary>Tells, here and in the book, what the notation cannot hold.</summary>
    public void CannotSay(string what) => Remark(TapeTexts.NotWritten, what);

    /// <summary>A text in quotes; marks that cannot stand in quotes are changed, which is told.</summary>
    public string Quoted(string name)
    {
        var clean = new string([.. name.Select(Clean)]);
        if (clean != name) Remark(TapeTexts.NameChanged, "A name or note holds quotes or characters that cannot be seen.", $"\"{clean}\"");
        return $"\"{clean}\"";
    }

    /// <summary>A note behind a statement, in quotes; nothing where it is empty.</summary>
    public string Note(string note) => string.IsNullOrWhiteSpace(note) ? "" : $" {Quoted(note)}";

    /// <summary>A word as it is, or in quotes where it would not read as one.</summary>
    public string Word(string word) => word.Length > 0 && word.All(c => char.IsLetterOrDigit(c) || c is '.' or '-' or '_' or '/') ? word : Quoted(word);

    public void Remark(TapeText remark, params object[] figures)
    {
        problems.Add(remark, line, 1, figures);
        var told = problems.Last;
        Add($"# {told.Message} {told.Hint}");
    }

    private static char Clean(char letter) => letter is '"' or '\u201C' or '\u201D' ? '\'' : char.IsControl(letter) ? ' ' : letter;
}
