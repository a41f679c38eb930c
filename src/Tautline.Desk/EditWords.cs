using Tautline.Documents.Words;
using Tautline.Engine.Editing;

namespace Tautline.Desk;

/// <summary>The name of an edit in the language of the page.</summary>
public static class EditWords
{
    public static string Of(EditLabel label, Phrases say) =>
        label.Kind == EditKind.Other ? label.Subject : say.Say("edit." + label.Kind, ("id", label.Subject));
}
