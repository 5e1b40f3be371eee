namespace LabelForge.Cli.Help;

/// <summary>The verbs as help lists them: by what a maker does, in the order of a day.</summary>
public static class VerbGroups
{
    /// <summary>Each group with its verbs.</summary>
    public static IReadOnlyList<(string Title, IReadOnlyList<string> Verbs)> All { get; } =
    [
        ("Begin", ["init", "demo", "serve", "today"]),
        ("Materials and recipes", ["material", "ask", "recipe", "declare", "soap", "fragrance", "colour"]),
        ("Labels",
            ["check", "label", "sheet", "print", "gallery", "design", "stock", "calibrate", "quantity", "rules", "lot", "table",
                "papers"]),
        ("At the bench", ["batch", "weigh", "dry"]),
        ("Selling", ["sell", "market", "return", "complaint", "trace"]),
        ("What is in the house", ["receive", "receive-list", "stock-in-hand", "count", "dispose", "attach", "tags"]),
        ("Money", ["cost", "buy", "next", "year"]),
        ("The books", ["books", "correct", "import", "backup", "restore", "agree-server"]),
        ("The command itself", ["help", "completion"]),
    ];

    /// <summary>The title under which verbs stand that no group names.</summary>
    public const string Rest = "More";
}
