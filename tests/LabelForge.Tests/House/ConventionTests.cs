using System.Reflection;
using System.Text.RegularExpressions;
using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Tests.House;

/// <summary>What holds all over the house, whoever writes in it.</summary>
public partial class ConventionTests
{
    private static readonly Assembly[] Domain =
        [typeof(Mass).Assembly, typeof(CompositionProof).Assembly, typeof(Market).Assembly, typeof(Recipe).Assembly,
            typeof(Declaration).Assembly, typeof(RecipeCheck).Assembly];

    // The share types themselves, and a rate that is of money.
    private static readonly string[] Stated =
    [
        "Share.Fraction", "Share.Percent", "ChargeShare.Fraction", "ChargeShare.Percent", "FinishedShare.Fraction",
        "FinishedShare.Percent", "SalesTax.Percent",
    ];

    [Fact]
    public void Public_types_of_the_domain_are_immutable() => Assert.Empty(
        from type in Domain.SelectMany(a => a.GetExportedTypes())
        from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
        where property.SetMethod is { IsPublic: true } set
            && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit))
        select $"{type.FullName}.{property.Name}");

    [Fact]
    public void Public_fields_of_the_domain_never_change() => Assert.Empty(
        from type in Domain.SelectMany(a => a.GetExportedTypes())
        from field in type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
        where !type.IsEnum && !field.IsInitOnly && !field.IsLiteral
        select $"{type.FullName}.{field.Name}");

    // The day to judge by is handed in. A clock is read where a person's call comes in, and where a page counts seconds.
    [Fact]
    public void No_layer_below_the_command_and_the_page_reads_a_clock() => Assert.Empty(
        Sources("Core", "Composition", "Law", "Products", "Labels", "Checks", "Print", "Records", "App")
            .Where(f => Clock().IsMatch(f.Text))
            .Select(f => f.Name));

    [Fact]
    public void The_command_reads_the_clock_in_one_place() =>
        Assert.Equal(["Shared.cs"], Sources("Cli").Where(f => Clock().IsMatch(f.Text)).Select(f => f.Name));

    // What ships is read in one place; a workshop, a market or a label brings it to all others.
    [Fact]
    public void What_ships_is_kept_in_one_place() => Assert.Equal(["Shipped.cs"],
        Sources("Core", "Composition", "Law", "Products", "Labels", "Checks", "Print", "Records", "App", "Web", "Cli")
            .Where(f => Regex.IsMatch(f.Text, @"static [^=(;]*\bShipped\b|\b(?:MarketBook|IngredientDictionary)\.Read\b"))
            .Select(f => f.Name));

    [Fact]
    public void All_below_the_doors_are_handed_the_law_and_the_dictionary() => Assert.Equal(["Shipped.cs"],
        Sources("Core", "Composition", "Law", "Products", "Labels", "Checks", "Print", "Records", "App")
            .Where(f => Regex.IsMatch(f.Text, @"\bShipped\b")).Select(f => f.Name));

    // Both are made from a batch by the mass balance alone.
    [Fact]
    public void No_share_of_the_finished_product_is_made_but_by_the_mass_balance() =>
        Assert.DoesNotContain(typeof(FinishedShare).GetConstructors(BindingFlags.Public | BindingFlags.Instance),
            c => c.GetParameters().Length > 0);

    [Fact]
    public void No_bare_decimal_is_called_a_share_or_a_percentage()
    {
        // In the room of bounds every number is a fraction, of a material or of the charge, as its documentation says.
        var all = Domain.Except([typeof(CompositionProof).Assembly]).SelectMany(a => a.GetExportedTypes())
            .SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                .Where(p => (Nullable.GetUnderlyingType(p.PropertyType) ?? p.PropertyType) == typeof(decimal)
                    && ShareOrPercent().IsMatch(p.Name))
                .Select(p => $"{t.Name}.{p.Name}"));
        Assert.Equal("", string.Join(", ", all.Except(Stated).Order(StringComparer.Ordinal)));
    }

    [Fact]
    public void A_file_of_code_stays_short()
    {
        var tooLong = Sources("Core", "Composition", "Law", "Products", "Labels", "Checks", "Print", "Records", "App", "Web", "Cli")
            .Where(f => f.Text.Count(c => c == '\n') > 320
                && !f.Name.Contains("Snapshot", StringComparison.Ordinal)
                && !f.Name.EndsWith(".Designer.cs", StringComparison.Ordinal));
        Assert.Empty(tooLong.Select(f => f.Name));
    }

    [Fact]
    public void No_method_is_longer_than_sixty_lines() => Assert.Empty(
        from source in Sources("Core", "Composition", "Law", "Products", "Labels", "Checks", "Print", "Records", "App", "Web", "Cli")
        from method in Methods(source.Text.Split('\n'))
        where method.Lines > 60
        select $"{source.Name}: {method.Heading} ({method.Lines})");

    [Theory]
    [InlineData(4, "    public int Of(int x)", "    {", "        // one", "    }", "", "    public int Other => 1;")]
    [InlineData(2, "    private static bool Is(", "        int x) => x > 0;", "    private int _after;", "}")]
    public void A_method_is_counted_to_its_end(int count, params string[] lines) =>
        Assert.Equal(count, Assert.Single(Methods(lines)).Lines);

    // \d takes the digits of every script, which no parser of numbers of ours takes: found by fuzzing, three times.
    [Fact]
    public void Patterns_of_figures_take_0_to_9_alone() => Assert.Empty(
        from source in Sources("Core", "Law", "Products", "Composition", "Labels", "Checks", "Print", "Records", "App", "Cli", "Web")
        where source.Text.Split('\n').Any(l => l.Contains("\\d", StringComparison.Ordinal) && l.Contains('"'))
        select source.Name);

    // A member stands four or eight blanks in, as the format has it, and ends where something else stands no deeper.
    private static IEnumerable<(string Heading, int Lines)> Methods(string[] lines)
    {
        for (var at = 0; at < lines.Length; at++)
        {
            if (Method().Match(lines[at]) is not { Success: true } heading)
                continue;
            var blanks = heading.Groups["blanks"].Length;
            var below = lines.Skip(at + 1).TakeWhile(l => l.Trim().Length == 0 || Blanks(l) > blanks
                || (Blanks(l) == blanks && l.Trim()[0] is '{' or '}' or ')' or ']'));
            yield return (lines[at].Trim(), 1 + below.Reverse().SkipWhile(l => l.Trim().Length == 0).Count());
        }
    }

    private static int Blanks(string line) => line.Length - line.TrimStart().Length;

    private static IEnumerable<(string Name, string Text)> Sources(params string[] layers) => layers
        .SelectMany(l => Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src", $"LabelForge.{l}"), "*.cs",
            SearchOption.AllDirectories))
        .Where(f => !Path.GetRelativePath(Repository.Folder, f).Split(Path.DirectorySeparatorChar)
            .Any(p => p is "obj" or "bin" or "Migrations"))
        .Order(StringComparer.Ordinal)
        .Select(f => (Path.GetFileName(f), File.ReadAllText(f)));

    [GeneratedRegex(@"^(?<blanks> {4}| {8})(?:public|private|internal|protected)(?! (?:\w+ )*(?:class|record|struct) )\b[^=;]*\w(?:<[\w, ?]+>)?\(")]
    private static partial Regex Method();

    [GeneratedRegex("Share|Percent|Fraction")]
    private static partial Regex ShareOrPercent();

    [GeneratedRegex(@"\bDateTime\.(Now|UtcNow|Today)\b|\bDateTimeOffset\.(Now|UtcNow)\b|\bTimeProvider\.System\b")]
    private static partial Regex Clock();
}
