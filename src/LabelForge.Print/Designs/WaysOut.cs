namespace LabelForge.Print.Designs;

/// <summary>What a maker may lawfully do where a label's words do not fit.</summary>
internal static class WaysOut
{
    /// <summary>The ways, for a panel.</summary>
    public static string Of(DesignPanel panel) => panel.Principal
        ? "Choose a larger label, a design with a longer principal panel, or move what need not stand there to a second panel."
        : "Choose a larger label, a design with a second panel, a fold-out or a tag; or a package with less surface than 12 sq in for labels, where 21 CFR 701.3(p) lets ingredients be 1/32 in high (write package: in the recipe).";
}
