namespace LabelForge.Cli.Help;

/// <summary>A call that shows what a verb is good for.</summary>
/// <param name="Verb">The verb, as <c>lot new</c>.</param>
/// <param name="Says">What it does, a sentence; empty where it goes with the call above it.</param>
/// <param name="Call">The call as typed, beginning with labelforge.</param>
public sealed record VerbExample(string Verb, string Says, string Call);

/// <summary>The examples that help shows. Each is run by the tests, in the order of the file.</summary>
public static class VerbExamples
{
    private static readonly Lazy<IReadOnlyList<VerbExample>> Loaded = new(Read);

    /// <summary>All, from the making of a workshop to the books.</summary>
    public static IReadOnlyList<VerbExample> All => Loaded.Value;

    /// <summary>Those of one verb.</summary>
    public static IEnumerable<VerbExample> Of(Command verb) => All.Where(e => e.Verb == PathOf(verb));

    /// <summary>A verb with those above it, without the program's own name: <c>lot new</c>.</summary>
    public static string PathOf(Command verb)
    {
        var names = new List<string>();
        for (var at = verb; at.Parents.OfType<Command>().FirstOrDefault() is { } above; at = above)
            names.Insert(0, at.Name);
        return string.Join(' ', names);
    }

    private static IReadOnlyList<VerbExample> Read()
    {
        using var lines = new StreamReader(typeof(VerbExamples).Assembly.GetManifestResourceStream("help/examples.txt")!);
        var (read, verb, says) = (new List<VerbExample>(), "", "");
        while (lines.ReadLine() is { } line)
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
            {
                verb = line[3..].Trim();
            }
            else if (line.StartsWith("    ", StringComparison.Ordinal))
            {
                read.Add(new VerbExample(verb, says, line.Trim()));
                says = "";
            }
            else if (line.Length > 0 && line[0] != '#')
            {
                says = line;
            }
        }
        return read;
    }
}
