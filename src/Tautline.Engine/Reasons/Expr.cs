using System.Collections.Immutable;
using Tautline.Engine.Catalog;

namespace Tautline.Engine.Reasons;

/// <summary>One step of an answer to 'why': a value with its unit, and what it was made from.</summary>
public abstract record Expr(double Value, Unit Unit);

public enum LeafKind { Given, Rule, Listed, Known, Constant }

/// <summary>Where an expression ends: a figure of the job, a rule, a catalogue row, or another fact.</summary>
public sealed record Leaf(LeafKind Kind, string Name, double Value, Unit Unit, Provenance? From, FactKey? Fact) : Expr(Value, Unit);

public enum Op { Add, Sum, Subtract, Multiply, Divide, Root, Size, Larger, Smaller, Cover, Fit, Nearest, NextSize, Pack, Power, Exp, Log }

public sealed record Operation(Op Op, ImmutableArray<Expr> Of, double Value, Unit Unit) : Expr(Value, Unit);
