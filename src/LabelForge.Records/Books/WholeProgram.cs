using System.Diagnostics.CodeAnalysis;

namespace LabelForge.Records.Books;

/// <summary>
/// Whether this program is the whole command, or the part of it that is compiled natively: everything that needs no books and no
/// page. The tables of the books are modelled, and pages are drawn, by code that is made when the program runs.
/// </summary>
public static class WholeProgram
{
    private const string Switch = "LabelForge.Whole";

    /// <summary>Whether it is. Native compilation takes this as fixed, and leaves out what stands behind it.</summary>
    [FeatureSwitchDefinition(Switch)]
    public static bool IsThis => !AppContext.TryGetSwitch(Switch, out var whole) || whole;
}

/// <summary>What was asked can be done by the whole program alone.</summary>
public sealed class NeedsWholeProgramException() : Exception("The books and the page are in the whole program alone.");
