namespace Tautline.Desk;

/// <summary>The steps of an estimate, in the order they are taken. Strength, price and crew follow these.</summary>
public enum DeskStep { Site, Spec, Ground, Fabric, Takeoff, Papers, Field }

/// <summary>What stands where on the page: the step that is worked on, and the drawing that is shown where there is room for one.</summary>
public sealed class Front
{
    public static IReadOnlyList<DeskStep> Steps { get; } = Enum.GetValues<DeskStep>();

    public event Action? Changed;

    public DeskStep Step { get; private set; }

    /// <summary>The sheet of the step, by its key: 'legs', 'posts', 'tape'...; empty for the first.</summary>
    public string Sheet { get; private set; } = "";

    public bool ShowsProfile { get; private set; }

    public void Go(DeskStep step, string sheet = "")
    {
        (Step, Sheet) = (step, sheet);
        Changed?.Invoke();
    }

    /// <summary>What people call the thing at an index: the first is 1.</summary>
    public static int Ordinal(int index) => index + 1;

    /// <summary>The index behind a number that people see.</summary>
    public static int IndexOf(int ordinal) => ordinal - 1;

    /// <summary>Its number on the rail, from 1.</summary>
    public static int NumberOf(DeskStep step) => (int)step + 1;

    /// <summary>Goes to a step by its number on the rail, from 1; another number does nothing.</summary>
    public void GoNumber(int number)
    {
        if (number >= 1 && number <= Steps.Count) Go(Steps[number - 1]);
    }

    public void ShowProfile(bool profile)
    {
        ShowsProfile = profile;
        Changed?.Invoke();
    }

    /// <summary>Selects something and goes where it can be seen.</summary>
    public void Visit(Session session, Selection selection)
    {
        session.Select(selection);
        switch (selection.Kind)
        {
            case SelectionKind.TakeoffLine: Go(DeskStep.Takeoff); break;
            case SelectionKind.Spec: Go(DeskStep.Spec, "specs"); break;
            case SelectionKind.Limit: Go(DeskStep.Spec, "rules"); break;
        }
    }
}
