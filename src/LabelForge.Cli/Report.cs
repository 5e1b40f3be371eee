using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;

namespace LabelForge.Cli;

/// <summary>Answers as a person reads them.</summary>
internal static class Report
{
    // More open pairs than these say less than the questions that settle them; --explain shows each.
    private const int PairsShown = 5;

    // Of findings alike so many are written out.
    private const int AlikeShown = 2;

    /// <summary>Says which of several products comes next; nothing where there is one alone.</summary>
    public static void Heading(IReadOnlyList<Product> products, int at)
    {
        if (products.Count > 1)
            Console.WriteLine($"{(at == 0 ? "" : "\n")}== {products[at].Name}{(products[at].Recipe.Item is { } item ? $" (item {item})" : "")}");
    }

    /// <summary>Answers for each of several products: as data, all in one answer, or in words, one after the other.</summary>
    public static void Each<T>(ImmutableArray<Product> products, ImmutableArray<T> answers, bool json, Func<Product, T, JsonObject> data,
        Action<Product, T> tell)
    {
        if (json)
            JsonOut.Write([.. products.Zip(answers, (p, a) => (p.Name, data(p, a)))]);
        for (var i = 0; i < products.Length && !json; i++)
        {
            Heading(products, i);
            tell(products[i], answers[i]);
        }
    }

    public static void Write(Declaration declaration)
    {
        Console.WriteLine(declaration.Statement);
        Console.WriteLine();
        foreach (var i in declaration.Ingredients)
            Console.WriteLine($"  {Percent(i.Low),9} to {Percent(i.High),9} %  {i.Name}{Marks(i)}");
        Console.WriteLine();
        Console.WriteLine(declaration.IsProved
            ? "The whole order is proved from what the suppliers say."
            : Open(declaration));
        foreach (var pair in declaration.Unsettled.Take(PairsShown))
            Console.WriteLine($"  {pair.First} before {pair.Second} ({(pair.Rests == Placed.Usual ? "usual levels" : "a guess")}). {pair.Ask}");
        if (declaration.Unsettled.Length > PairsShown)
            Console.WriteLine($"  and {declaration.Unsettled.Length - PairsShown} more; --explain shows each, and the levels with their sources.");
        foreach (var finding in declaration.Findings)
            Write(finding);
    }

    private static string Open(Declaration declaration)
    {
        var usual = declaration.Unsettled.Count(u => u.Rests == Placed.Usual);
        return $"Not settled by what the suppliers say ({declaration.Unsettled.Length} pairs); these stand by the "
            + $"best estimate, {usual} of them on published usual levels, {declaration.Unsettled.Length - usual} on a guess:";
    }

    private static string Marks(DeclaredIngredient ingredient)
    {
        string[] marks = [.. new[]
        {
            ingredient.Part == Part.Main ? "" : ingredient.Part.ToString().ToLowerInvariant(),
            ingredient.Placed == Placed.Proved ? "" : ingredient.Placed == Placed.Usual ? "placed by usual levels" : "placed by a guess",
        }.Where(m => m.Length > 0)];
        return marks.Length == 0 ? "" : $"  ({string.Join(", ", marks)})";
    }

    public static void Write(CommonLabel common)
    {
        Console.WriteLine($"\nOne label for all: {(common.Declaration is null ? "no." : "yes.")} {common.Why} [{common.Source}]");
        if (common.Declaration is { } declaration)
            Console.WriteLine($"    {declaration.Statement}");
    }

    public static void Write(CheckReport report)
    {
        Console.WriteLine($"Checked against the rules of: {report.Market}. What stands on the label, as read:");
        foreach (var (what, text) in report.Found.Parts)
            Console.WriteLine($"  {what + ":",-14}{(text.Length == 0 ? "(none)" : text)}");
        foreach (var group in report.Findings.GroupBy(f => f.Severity))
        {
            Console.WriteLine();
            Console.WriteLine(group.Key switch
            {
                Severity.Must => "MUST: a rule requires it",
                Severity.Should => "SHOULD: good practice, or a risk",
                _ => "NOTE",
            });
            foreach (var rule in group.GroupBy(f => (f.Rule, f.Source, f.Where)))
                WriteAlike([.. rule]);
        }
        if (report.Findings.IsEmpty)
            Console.WriteLine("\nNothing was found wrong or missing by these checks. They are not legal advice.");
    }

    public static void Write(Finding finding)
    {
        Console.WriteLine($"  {finding.Rule} [{finding.Source}] {finding.Where}");
        Console.WriteLine($"    {finding.Message}");
        Console.WriteLine($"    {finding.Fix}");
    }

    // Two dozen findings of one rule at one place hide what stands below them.
    private static void WriteAlike(IReadOnlyList<Finding> findings)
    {
        Write(findings[0]);
        foreach (var finding in findings.Skip(1).Take(AlikeShown - 1))
        {
            Console.WriteLine($"    {finding.Message}");
            Console.WriteLine($"    {finding.Fix}");
        }
        if (findings.Count > AlikeShown)
            Console.WriteLine($"    And {findings.Count - AlikeShown} more like {(AlikeShown == 1 ? "it" : "these")}; --format json lists each. {(findings[0].Rule == "ingredients.order" ? "labelforge ask writes the shortest message that settles most." : "")}".TrimEnd());
    }

    private static string Percent(decimal value) => value.ToString("0.0000", CultureInfo.InvariantCulture);
}
