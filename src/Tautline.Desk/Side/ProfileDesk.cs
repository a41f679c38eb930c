using Microsoft.JSInterop;
using Tautline.Documents.Scenes;
using Tautline.Engine.Jobs;
using Tautline.Engine.Picture;
using Tautline.Engine.Problems;

namespace Tautline.Desk.Side;

/// <summary>Which part of which line the profile shows, and what is pointed at on it. The drawing itself comes from <see cref="ProfileDrawing"/>.</summary>
public sealed class ProfileDesk(Session session, Look look)
{
    /// <summary>Nothing is looked at closer than this, in metres.</summary>
    private const double Closest = 2;

    private ProfilePicture? picture;
    private int revision = -1;
    private LineId line;
    private double from, to;
    private (double Width, double Height) size;

    /// <summary>The drawing must be made anew.</summary>
    public event Action? Changed;

    /// <summary>How many times taller than true heights are drawn; 0 for what fits.</summary>
    public double Exaggeration { get; private set; }

    /// <summary>What the drawing has come to use.</summary>
    public double Shown { get; private set; } = 1;

    /// <summary>False where heights only follow the slopes of the legs.</summary>
    public bool Measured => picture?.Measured ?? true;

    public LineId Line => line;

    /// <summary>Takes up the plan of the session; a line that is selected comes to be shown.</summary>
    public void Follow()
    {
        if (!session.HasJob || session.Planning) return;
        int wanted = IndexOf(session.Selected.Line);
        if (wanted < 0) wanted = IndexOf(line);
        if (wanted < 0) wanted = session.Plan.Lines.Count > 0 ? 0 : -1;
        if (wanted < 0)
        {
            picture = null;
            return;
        }

        LineId now = session.Plan.Lines[wanted].Id;
        if (now == line && revision == session.Revision && picture is not null) return;
        bool whole = picture is null || now != line || (from <= 0 && to >= picture.Length);
        (line, revision, picture) = (now, session.Revision, ProfileStage.Of(session.Plan, wanted));
        if (whole) (from, to) = (0, picture.Length);
        Clamp();
    }

    public void Choose(LineId chosen)
    {
        session.Select(Selection.OfLine(chosen));
        Follow();
        Changed?.Invoke();
    }

    public void Exaggerate(double times)
    {
        Exaggeration = times;
        Changed?.Invoke();
    }

    public void Fit()
    {
        if (picture is null) return;
        (from, to) = (0, picture.Length);
        Changed?.Invoke();
    }

    public void ZoomBy(double factor)
    {
        double middle = (from + to) / 2;
        Zoom(factor, middle);
        Changed?.Invoke();
    }

    /// <summary>The drawing as text; empty where there is nothing to draw or no room.</summary>
    public string Draw()
    {
        Follow();
        if (picture is null || size.Width < 40 || size.Height < 40) return "";
        Scene scene = ProfileDrawing.Of(picture, Sight, session.Words, look.Say);
        Shown = scene.Exaggeration;
        return SvgWriter.Fragment(scene);
    }

    /// <summary>The tag by which the drawing knows what is pointed at; empty where it is not on it.</summary>
    public string TagOf(Selection selection) => selection.Line != line ? "" : selection.Kind switch
    {
        SelectionKind.Post => $"post {selection.Index}",
        SelectionKind.Bay => $"bay {selection.Index}",
        SelectionKind.Run => $"run {selection.Index}",
        SelectionKind.Gate => $"gate {selection.Index}",
        SelectionKind.Grading => $"grading {selection.Index}",
        _ => "",
    };

    /// <summary>Moves the window to a post that was selected elsewhere. True where it moved.</summary>
    public bool Reveal()
    {
        if (picture is null || session.Selected.Line != line || session.Selected.Kind is not (SelectionKind.Post or SelectionKind.Bay) || session.Selected.Index >= picture.Posts.Count) return false;
        double at = picture.Posts[session.Selected.Index].Station;
        if (at >= from && at <= to) return false;
        double half = (to - from) / 2;
        (from, to) = (at - half, at + half);
        Clamp();
        return true;
    }

    [JSInvokable]
    public void Sized(double width, double height)
    {
        if (size == (width, height)) return;
        size = (width, height);
        Changed?.Invoke();
    }

    [JSInvokable]
    public void Moved(double pan, double factor, double x)
    {
        if (picture is null) return;
        if (pan != 0)
        {
            double by = ProfileDrawing.StationAt(picture, Sight, pan) - ProfileDrawing.StationAt(picture, Sight, 0);
            (from, to) = (from + by, to + by);
            Clamp();
        }

        if (factor != 1) Zoom(factor, ProfileDrawing.StationAt(picture, Sight, x));
        Changed?.Invoke();
    }

    [JSInvokable]
    public void Hovered(string tag) => session.Hover(SelectionOf(tag));

    [JSInvokable]
    public void Picked(string tag) => session.Select(SelectionOf(tag));

    [JSInvokable]
    public void Pressed(string key)
    {
        if (picture is null || picture.Posts.Count == 0) return;
        int now = session.Selected is { Kind: SelectionKind.Post or SelectionKind.Bay } at && at.Line == line ? at.Index : -1;
        int last = picture.Posts.Count - 1;
        switch (key)
        {
            case "ArrowLeft": Step(now < 0 ? last : Math.Max(0, now - 1)); break;
            case "ArrowRight": Step(Math.Min(last, now + 1)); break;
            case "Home": Step(0); break;
            case "End": Step(last); break;
            case "+": ZoomBy(0.7); break;
            case "-": ZoomBy(1.43); break;
            default: Fit(); break;
        }
    }

    private ProfileSight Sight => new(from, to, size.Width, size.Height, Exaggeration) { Type = 11, ForScreen = true };

    private void Step(int post) => session.Select(Selection.Post(line, post));

    private void Zoom(double factor, double about)
    {
        double length = Math.Clamp((to - from) * factor, Math.Min(Closest, picture!.Length), picture.Length);
        double share = to > from ? Math.Clamp((about - from) / (to - from), 0, 1) : 0.5;
        (from, to) = (about - (share * length), about + ((1 - share) * length));
        Clamp();
    }

    private void Clamp()
    {
        double length = Math.Min(to - from, picture!.Length);
        if (!(length > 0)) length = picture.Length;
        from = Math.Clamp(from, 0, Math.Max(0, picture.Length - length));
        to = from + length;
    }

    private int IndexOf(LineId id)
    {
        for (int i = 0; i < session.Plan.Lines.Count; i++)
            if (session.Plan.Lines[i].Id == id) return i;
        return -1;
    }

    private Selection SelectionOf(string tag)
    {
        string[] parts = tag.Split(' ');
        if (picture is null || parts.Length != 2 || !int.TryParse(parts[1], out int index)) return Selection.None;
        return parts[0] switch
        {
            "post" => Selection.Post(line, index),
            "bay" => Selection.Bay(line, index),
            "run" => Selection.Run(line, index),
            "gate" when index < picture.Gates.Count => Selection.Gate(line, index, picture.Gates[index].Id),
            "grading" => new Selection(SelectionKind.Grading, line, index),
            "problem" when index < session.Plan.Problems.Count && session.Plan.Problems[index] is Problem problem => ProblemTarget.Of(session.Job, session.Plan, problem.Place),
            _ => Selection.None,
        };
    }
}
