namespace Tautline.Documents.Scenes;

/// <summary>What a part of a drawing is. Nothing is told by colour alone: each role has a weight, dash or hatch of its own.</summary>
public enum SceneRole
{
    Axis, Grid, Label, Strong, Earth, Ground, Hole, Fabric, FabricEdge, Rail, Post, Terminal, PostTop, Gate, Cut, Fill, Gap, Pull, Splice, Drop, Warning, Error, Note, Wire, WireOff, CutPath, Step,
    Dimension, Hidden, Hit, Leg, Swing, Zone, Pipe, Concrete, Callout, Bar,
}

/// <summary>How a closed part is filled.</summary>
public enum SceneFill
{
    None,
    Paper,
    Ink,
    Wash,

    /// <summary>Diamonds.</summary>
    Mesh,

    /// <summary>Strokes rising to the right.</summary>
    Rising,

    /// <summary>Strokes falling to the right.</summary>
    Falling,
    Dots,
}

/// <summary>How a role looks in print.</summary>
/// <param name="Pen">Width of the stroke; 0 for none.</param>
/// <param name="Grey">0 is black.</param>
/// <param name="Dash">Length of dash and gap; 0 for a whole line.</param>
public readonly record struct RoleStyle(double Pen, double Grey, double Dash, SceneFill Fill, bool Bold = false)
{
    public static RoleStyle Of(SceneRole role) => role switch
    {
        SceneRole.Axis => new(0.6, 0.2, 0, SceneFill.None),
        SceneRole.Grid => new(0.3, 0.75, 0, SceneFill.None),
        SceneRole.Label or SceneRole.Note => new(0.5, 0.15, 0, SceneFill.None),
        SceneRole.Strong => new(0.5, 0, 0, SceneFill.None, true),
        SceneRole.Earth => new(0, 0.9, 0, SceneFill.Wash),
        SceneRole.Ground => new(1.3, 0, 0, SceneFill.None),
        SceneRole.Hole => new(0.5, 0.3, 2, SceneFill.Dots),
        SceneRole.Fabric => new(0, 0.6, 0, SceneFill.Mesh),
        SceneRole.FabricEdge => new(0.5, 0.35, 0, SceneFill.None),
        SceneRole.Rail => new(1.2, 0, 0, SceneFill.None),
        SceneRole.Post => new(1, 0.1, 0, SceneFill.None),
        SceneRole.Terminal => new(2.2, 0, 0, SceneFill.None),
        SceneRole.PostTop => new(0.8, 0, 0, SceneFill.Paper),
        SceneRole.Gate => new(1, 0, 0, SceneFill.Paper),
        SceneRole.Cut => new(0.5, 0.2, 0, SceneFill.Rising),
        SceneRole.Fill => new(0.5, 0.2, 0, SceneFill.Falling),
        SceneRole.Gap => new(0.5, 0.2, 0, SceneFill.Dots),
        SceneRole.Pull => new(0.9, 0.1, 0, SceneFill.Ink),
        SceneRole.Splice => new(1, 0, 0, SceneFill.None),
        SceneRole.Drop => new(0.8, 0, 0, SceneFill.Paper),
        SceneRole.Warning => new(1, 0, 0, SceneFill.Paper, true),
        SceneRole.Error => new(1.4, 0, 0, SceneFill.Paper, true),
        SceneRole.Wire => new(0.7, 0.35, 0, SceneFill.None),
        SceneRole.WireOff => new(0.5, 0.65, 1.5, SceneFill.None),
        SceneRole.CutPath => new(1.8, 0, 0, SceneFill.None),
        SceneRole.Step => new(1.8, 0, 0, SceneFill.Ink),
        SceneRole.Dimension => new(0.4, 0.1, 0, SceneFill.Ink),
        SceneRole.Hidden => new(0.5, 0.4, 3, SceneFill.None),
        SceneRole.Leg => new(1.1, 0, 0, SceneFill.None),
        SceneRole.Swing => new(0.5, 0.2, 2.5, SceneFill.None),
        SceneRole.Zone => new(0.6, 0.3, 4, SceneFill.Rising),
        SceneRole.Pipe => new(0.9, 0, 0, SceneFill.Paper),
        SceneRole.Concrete => new(0.6, 0.2, 0, SceneFill.Dots),
        SceneRole.Callout => new(0.4, 0.1, 0, SceneFill.Paper, true),
        SceneRole.Bar => new(1.4, 0, 0, SceneFill.Ink),
        SceneRole.Hit => new(0, 1, 0, SceneFill.None),
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "No such role."),
    };
}
