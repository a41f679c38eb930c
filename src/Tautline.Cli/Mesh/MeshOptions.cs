using Tautline.Engine.Fabric;

namespace Tautline.Cli.Mesh;

/// <param name="For">Id of the spec whose fabric was measured; nothing where the job has one.</param>
internal sealed record MeshOptions(PlanningOptions Planning, string? For, MeshMeasured Measured);
