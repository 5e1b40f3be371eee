namespace LabelForge.Checks.Subjects;

/// <summary>What no label shows and the market asks for all the same.</summary>
internal static class OutsideChecks
{
    private static readonly string[] Rules = ["outside.safety-report", "outside.product-file", "outside.notification", "outside.hotlist",
        "outside.quebec"];

    public static void Check(CheckCase label)
    {
        label.Tell("language.note", "label");
        foreach (var rule in Rules)
            label.Tell(rule, "outside the label");
    }
}
