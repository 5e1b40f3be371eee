namespace LabelForge.Composition;

/// <summary>How far a supplier's order can be trusted.</summary>
public enum ListedOrder { Strict, Label, None }
