namespace LabelForge.Cli.Completion;

/// <summary><c>complete</c>, hidden: what a shell's script asks at a press of the key, one proposal to a line.</summary>
internal static class CompleteVerb
{
    public static Command Build(Command root)
    {
        var at = new Option<int?>("--at") { Description = "Where in the line the cursor stands" };
        var line = new Argument<string>("LINE") { Description = "The line as typed, the command's own name first" };
        var verb = new Command("complete", "Proposes the next word of a call") { at, line };
        verb.Hidden = true;
        verb.SetAction(r =>
        {
            foreach (var word in Words(root, r.GetValue(line)!, r.GetValue(at)))
                Console.WriteLine(word);
            return Exit.Done;
        });
        return verb;
    }

    /// <summary>What may stand where the cursor is, beginning with what stands there already.</summary>
    /// <param name="root">The command.</param>
    /// <param name="line">The line, the command's own name first.</param>
    /// <param name="at">The cursor, counted from the line's start; null for its end.</param>
    public static IEnumerable<string> Words(Command root, string line, int? at)
    {
        // What stands behind the cursor is not yet part of the question.
        var typed = line[..Math.Clamp(at ?? line.Length, 0, line.Length)];
        var own = typed.TakeWhile(c => !char.IsWhiteSpace(c)).Count();
        if (own == typed.Length)
            return [];
        var call = typed[own..].TrimStart();
        var begun = Begun(call);
        return root.Parse(call, CommandTree.Reading).GetCompletions(call.Length)
            .Select(c => c.InsertText ?? c.Label)
            .Where(w => w.StartsWith(begun, StringComparison.Ordinal)
                && !w.StartsWith("/", StringComparison.Ordinal)
                && w is not ("-?" or "-h"))
            // Options come once asked for with a dash; before that they would bury the names.
            .Where(w => begun.Length > 0 || !w.StartsWith('-'))
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);
    }

    private static string Begun(string call)
    {
        var quotes = call.Count(c => c == '"');
        return quotes % 2 == 1 ? call[(call.LastIndexOf('"') + 1)..] : call[(call.LastIndexOfAny([' ', '\t']) + 1)..];
    }
}
