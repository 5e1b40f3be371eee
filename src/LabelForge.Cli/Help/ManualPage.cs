namespace LabelForge.Cli.Help;

/// <summary>The manual page that <c>man labelforge</c> shows, made of the tree that reads the
/// calls: every verb with what it takes, and examples.</summary>
/// <remarks>In the macros of man(7). It bears no date of its own, so that the same sources give the same page.</remarks>
public static class ManualPage
{
    /// <summary>The page, with plain line ends.</summary>
    public static string Of(Command root)
    {
        var page = new StringBuilder();
        page.Append($".TH LABELFORGE 1 \"\" \"labelforge {Escaped(ShowVersion.Number)}\" \"Labels for soap and body care\"\n");
        page.Append(".SH NAME\nlabelforge \\- from a recipe to a checked, printed sheet of labels\n");
        page.Append(".SH SYNOPSIS\n.B labelforge\n.I verb\n[\\fIoptions\\fR]\n");
        page.Append($".SH DESCRIPTION\n{Line(root.Description!)}.PP\n{Line("A workshop is a folder of plain files: workshop.yaml, materials/, recipes/. Verbs are run in it, or with --workshop FOLDER.")}");
        page.Append(".SH VERBS\n");
        foreach (var verb in root.Subcommands.Where(v => !v.Hidden))
            Verb(page, verb);
        page.Append(".SH EXIT STATUS\n");
        foreach (var (code, says) in Exit.Meanings)
            page.Append($".TP\n.B {code}\n{Line(Sentence(code == Exit.WrongInput ? $"{says}: {Exit.NothingWritten}" : says))}");
        page.Append($".SH FILES\n.TP\n.I workshop.yaml\n{Line("The business, its market and its usual sheets.")}.TP\n.I materials/, recipes/\n{Line("One file for each, named by its id.")}.TP\n.I records.db\n{Line("The books, in SQLite.")}");
        page.Append($".SH CAUTION\n{Line("Labels are checked against the texts that the program names; it does not decide what is lawful for you. Lye and hot wax hurt: read each material's safety data sheet.")}");
        return page.ToString();
    }

    private static void Verb(StringBuilder page, Command verb)
    {
        var path = VerbExamples.PathOf(verb);
        page.Append($".SS {Escaped(path)}\n{Line($"{verb.Description}.")}");
        foreach (var argument in verb.Arguments)
            Entry(page, ValueNames.Of(argument), ValueNames.Says(argument));
        foreach (var option in ValueNames.Shown(verb))
            Entry(page, ValueNames.Of(option), ValueNames.Says(option));
        foreach (var example in VerbExamples.Of(verb))
            page.Append($".PP\n{(example.Says.Length > 0 ? Line(example.Says) : "")}.nf\n.RS\n{Line(example.Call)}.RE\n.fi\n");
        foreach (var under in verb.Subcommands.Where(v => !v.Hidden))
            Verb(page, under);
    }

    private static void Entry(StringBuilder page, string name, string says) => page.Append($".TP\n\\fB{Escaped(name)}\\fR\n{Line(says)}");

    private static string Sentence(string text) => $"{char.ToUpperInvariant(text[0])}{text[1..]}.";

    // A line that begins with a full stop or an apostrophe would be read as a request.
    private static string Line(string text) =>
        Escaped(text) is var escaped && escaped.Length > 0 && escaped[0] is '.' or '\'' ? $"\\&{escaped}\n" : $"{escaped}\n";

    private static string Escaped(string text) =>
        text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal);
}
