using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Findings;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>check</c>: what is missing or wrong on what would be printed, or on a label made elsewhere.</summary>
internal static class CheckVerb
{
    public static Command Build()
    {
        var verb = new Verb("check",
            "What is missing or wrong on a label, a recipe's or one made elsewhere, with the source of each rule");
        var file = verb.Argument<string?>("FILE",
            "A recipe (file or id), a label made elsewhere (.txt, .md, .pdf, or - for standard input), or a folder of labels",
            ArgumentArity.ZeroOrOne);
        var all = verb.Option<bool>("--all", "Every product of the workshop, market by market (--market us,eu or all)");
        var workshop = verb.Workshop();
        var market = verb.Market();
        var design = verb.Design();
        var lot = verb.Lot(required: false);
        var product = verb.Option<string?>("--product", "The kind of product, for example soap-bar (default: what the label says)");
        var panel = verb.Option<string?>("--panel",
            "The principal display panel, for example 2.5x3.5in (default: the page of a one-label PDF)");
        var soldAs = verb.Option<string?>("--sold-as", "soap or cosmetic (default: judged from the words)");
        soldAs.AcceptOnlyFromAmong("soap", "cosmetic");
        var facts = verb.Option<string[]>("--fact",
            "What a rule asks of a product on a label made elsewhere: adults-only, or spray=no (a recipe says it under facts:)");
        facts.AllowMultipleArgumentsPerToken = true;
        var format = verb.Format();
        var on = verb.On();
        var variant = verb.Variant();
        var output = OutputOption.Named("--report", "Write a report with the label's picture and the places marked: FILE.html or FILE.pdf",
            FileKind.Html, FileKind.Pdf).AddTo(verb);
        return verb.OpensBooksWhereKept(r => r.GetValue(lot) is null ? null : Shared.FolderOf(r.GetValue(file), r.GetValue(workshop)), r =>
        {
            var path = output.PathOrNone(r);
            var date = Shared.Date(r.GetValue(on));
            var json = r.GetValue(format) == "json";
            if (r.GetValue(all))
                return CheckAllVerb.OfWorkshop(r.GetValue(workshop) ?? r.GetValue(file) ?? Directory.GetCurrentDirectory(),
                    r.GetValue(market), date, json);
            if (r.GetValue(file) is not { } named)
                throw new InputException("call.nothing-named");
            if (Directory.Exists(named) && !File.Exists(Path.Combine(named, "workshop.yaml")))
                return CheckAllVerb.OfFolder(named, Shared.MarketOf(r.GetValue(market), r.GetValue(workshop)), date, json);
            if (!LabelInput.IsLabel(named))
                return OfRecipe(named, r.GetValue(workshop), r.GetValue(market), r.GetValue(design), r.GetValue(lot), r.GetValue(variant),
                    date, path, json);
            var question = new LabelQuestion(date, Shared.MarketOf(r.GetValue(market), r.GetValue(workshop)), r.GetValue(product),
                r.GetValue(panel), r.GetValue(soldAs), string.Join(' ', r.GetValue(facts) ?? []));
            return OfLabels(CheckLabel.Each(LabelInput.Read(named), question, Shipped.Dictionary), path, date, json);
        });
    }

    private static int OfLabels(ImmutableArray<(string Name, LabelStatement Reading, CheckReport Report)> labels, string? output,
        DateOnly on, bool json)
    {
        if (output is not null)
            WriteReport(output,
                [
                    .. labels.Select(l => new JudgedLabel(labels.Length == 1 ? l.Reading.Text.Where : l.Name, l.Report,
                        MarkedPages.Of(l.Reading, l.Report), l.Reading))], on);
        if (json && labels.Length == 1)
            JsonOut.Write(JsonOut.Of(labels[0].Report));
        else if (json)
            JsonOut.Write([.. labels.Select(l => (l.Name, JsonOut.Of(l.Report)))]);
        foreach (var label in json ? [] : labels)
        {
            if (labels.Length > 1)
                Console.WriteLine($"== {label.Name}");
            Report.Write(label.Report);
        }
        return labels.Any(l => l.Report.HasMust) ? Exit.FindingStands : Exit.Done;
    }

    private static int OfRecipe(string file, string? workshop, string? market, string? design, string? lot, string? variant, DateOnly on,
        string? output, bool json)
    {
        if (Shared.SetNamed(file, workshop) is var (shop, set))
            return OfSet(SetLabel.Prepare(shop, set, Shared.MarketOf(market, shop),
                lot is { } own ? Shared.Need(LotCode.Parse(own)) : null, on), set, on, output, json);
        var products = Shared.Products(file, workshop, variant);
        var where = Shared.MarketOf(market, products[0].Workshop);
        var code = lot is { } text ? Shared.Need(LotCode.Parse(text)) : (LotCode?)null;
        if (code is { } known)
            products = LotBinding.Bind(products, known, where, on);
        var jobs = Product.Each(products, p => LabelJob.Prepare(p, where, design, code, on));
        var reports = Product.Each(products, p => RecipeCheck.Run(jobs[products.IndexOf(p)].Facts));
        if (output is not null)
            WriteReport(output, [.. jobs.Zip(reports)], on);
        Report.Each(products, reports, json, (_, r) => JsonOut.Of(r), (_, r) => Report.Write(r));
        return reports.Any(r => r.HasMust) ? Exit.FindingStands : Exit.Done;
    }

    private static int OfSet(LabelJob job, GiftSet set, DateOnly on, string? output, bool json)
    {
        var report = job.Check();
        if (output is not null)
            WriteReport(output,
                [new JudgedLabel($"{set.Name}, {job.Content.Identity}", report,
                    job.Fit is Fit.Fits fits ? MarkedPages.Of(fits.Layout, report) : [], null)], on);
        if (json)
            JsonOut.Write(JsonOut.Of(report));
        else
            Report.Write(report);
        return report.HasMust ? Exit.FindingStands : Exit.Done;
    }

    private static void WriteReport(string path, ImmutableArray<(LabelJob Job, CheckReport Report)> judged, DateOnly on) =>
        WriteReport(path, [.. judged.Select(j => new JudgedLabel(
            $"{j.Job.Product.Recipe.Name}, {j.Job.Product.Recipe.Identity}", j.Report,
            j.Job.Fit is Fit.Fits fits ? MarkedPages.Of(fits.Layout, j.Report) : [], null))], on);

    private static void WriteReport(string path, ImmutableArray<JudgedLabel> labels, DateOnly on)
    {
        switch (Path.GetExtension(path).ToLowerInvariant())
        {
            case ".html" or ".htm":
                FindingsHtml.Write(path, labels, on);
                break;
            case ".pdf":
                FindingsPdf.Write(path, labels, on);
                break;
            case var other:
                throw new InputException(path, 0, "call.report-file-kind", ("other", other));
        }
    }
}
