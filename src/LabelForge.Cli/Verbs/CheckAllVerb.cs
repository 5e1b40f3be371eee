using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.UseCases;
using Spectre.Console;

namespace LabelForge.Cli.Verbs;

/// <summary><c>check --all</c>, every product of a workshop, and <c>check FOLDER</c>, every label
/// in a folder: one table, and each broken rule below it.</summary>
internal static class CheckAllVerb
{
    /// <summary>Judges a workshop.</summary>
    /// <param name="folder">The workshop's folder.</param>
    /// <param name="markets">The markets, parted by commas; <c>all</c> for every one known; null for the workshop's own.</param>
    /// <param name="on">The day to judge by.</param>
    /// <param name="json">Whether JSON is wanted.</param>
    public static int OfWorkshop(string folder, string? markets, DateOnly on, bool json)
    {
        var workshop = Shared.OpenFolder(folder);
        if (workshop.RecipeIds.IsEmpty)
            throw new InputException(folder, 0, "call.no-recipes");
        return Write(WorkshopJudgement.Of(workshop, MarketsOf(markets, workshop), on), json);
    }

    /// <summary>Judges the labels of a folder: PDF and text, in the order of their names.</summary>
    public static int OfFolder(string folder, Market at, DateOnly on, bool json)
    {
        var files = Directory.EnumerateFiles(folder).Where(LabelInput.IsLabel).Order(StringComparer.Ordinal).ToArray();
        if (files.Length == 0)
            throw new InputException(folder, 0, "call.no-labels-here");
        return Write(CheckLabel.All(files.Select(f => (Path.GetFileName(f), (Func<LabelText>)(() => LabelInput.Read(f)))),
            new LabelQuestion(on, at), Shipped.Dictionary), json);
    }

    private static ImmutableArray<Market> MarketsOf(string? named, Workshop workshop) => named == "all"
        ? [.. workshop.Markets.All]
        : [.. (named is null ? new string?[] { null } : named.Split(',')).Select(id => Shared.MarketOf(id, workshop)).Distinct()];

    private static int Write(ImmutableArray<JudgedProduct> judged, bool json)
    {
        if (json)
            Json(judged);
        else
            Text(judged);
        return judged.Any(j => j.Problem is not null)
            ? Exit.WrongInput
            : judged.Any(j => j.Report!.HasMust)
            ? Exit.FindingStands
            : Exit.Done;
    }

    private static void Json(ImmutableArray<JudgedProduct> judged)
    {
        foreach (var bad in judged.Where(j => j.Problem is not null))
            Console.Error.WriteLine($"{bad.Product}: {bad.Problem}");
        if (judged.Where(j => j.Report is not null).Select(j => (j.Product, JsonOut.Of(j.Report!))).ToArray() is { Length: > 0 } answers)
            JsonOut.Write(answers);
    }

    private static void Text(ImmutableArray<JudgedProduct> judged)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumns("product", "market", "must", "should", "note");
        foreach (var of in judged)
        {
            table.AddRow(of.Problem is null
                ? [Markup.Escape(of.Product), of.Market.Id, Figure(of, Severity.Must), Figure(of, Severity.Should),
                    Figure(of, Severity.Note)]
                : [Markup.Escape(of.Product), of.Market.Id, "not judged", "", ""]);
        }
        AnsiConsole.Write(table);
        foreach (var of in judged)
        {
            if (of.Problem is { } problem)
                Console.WriteLine($"{of.Product}: {problem}");
            foreach (var must in of.Report?.Findings.Where(f => f.Severity == Severity.Must) ?? [])
                Console.WriteLine($"MUST {of.Product} ({of.Market.Id}) {must.Rule}: {must.Message}\n     {must.Fix} [{must.Source}]");
        }
        Console.WriteLine(
            $"{judged.Select(j => j.Product).Distinct().Count()} looked at, {judged.Count(j => j.Report?.HasMust == true)} with something "
                + $"that a rule requires, {judged.Count(j => j.Problem is not null)} not judged. "
            + "Checked against the rules named by labelforge rules; labelforge check NAME shows each in full.");
    }

    private static string Figure(JudgedProduct of, Severity severity) =>
        of.Count(severity) is var count && count == 0 ? "-" : count.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
