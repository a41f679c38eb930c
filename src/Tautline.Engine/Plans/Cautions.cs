namespace Tautline.Engine.Plans;

/// <summary>Short cautions that go with every plan, on paper and on screens.</summary>
public static class Cautions
{
    public static string Digging { get; } =
        "Digging: have every buried line located and marked before the first hole (in the US call 811 some working days ahead) and keep the"
        + " ticket valid. Near a mark dig by hand or vacuum. Cover or barricade open holes.";

    public static string Tension { get; } =
        "Tensioned fabric and wire store energy: use rated grips and stretchers, stand clear of the line of pull, wear eye protection and"
        + " gloves; cut ends and released pickets spring. Pull on no terminal before it is braced and its concrete has cured.";

    public static IReadOnlyList<string> All { get; } =
    [
        Digging,
        Tension,
        "Gates: prop a leaf until it hangs on all its hinges, and check its swing over the highest ground. Powered gates have safety rules of"
        + " their own and are not planned here.",
        "This plan counts and lays out; it does not prove that the fence stands. Local codes go first; wind, footings and soil are for a"
        + " licensed engineer where the code or the owner asks, property lines for a licensed surveyor.",
        "Figures marked 'verify' rest on memory or common practice: check them before ordering.",
    ];
}
