namespace Tautline.Engine.Layout;

/// <summary>How a post is held in the ground.</summary>
public enum Support
{
    /// <summary>Set in a hole filled with concrete.</summary>
    Concrete,

    /// <summary>Driven; line posts only.</summary>
    Driven,

    /// <summary>Grouted into a core of rock or slab.</summary>
    Cored,

    /// <summary>Stands already.</summary>
    Standing,

    /// <summary>Welded to a plate that is anchored to a slab or wall.</summary>
    Plated,

    /// <summary>Held by brackets on the face of a wall.</summary>
    Bracketed,
}
