namespace LabelForge.Composition;

/// <summary>How far a supplier's order can be trusted.</summary>
public enum ListedOrder
{
    /// <summary>Every constituent stands before what weighs less.</summary>
    Strict,

    /// <summary>As on a label: so above the one-percent line, in any order below it, colours last.</summary>
    Label,

    /// <summary>Not at all.</summary>
    None,
}
