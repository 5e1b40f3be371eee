using LabelForge.Declarations;
using LabelForge.Lots;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Proofs;
using LabelForge.Records.Books;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary>What the verbs that print take alike: the recipe, its lot, the market and the design.</summary>
/// <param name="severalRecipes">Whether recipes and lots may be named elsewhere, so that neither is required here.</param>
internal sealed class PrintInputs(bool severalRecipes = false)
{
    private readonly Argument<string> _recipe = Shared.RecipeArgument(required: !severalRecipes);
    private readonly Option<string?> _workshop = Shared.Workshop();
    private readonly Option<string?> _market = Shared.Market();
    private readonly Option<string?> _design = Shared.Design();
    private readonly Option<string?> _lot = Shared.Lot(required: !severalRecipes);
    private readonly Option<string?> _on = Shared.On();
    private readonly Option<string?> _variant = Shared.Variant();
    private readonly Option<string> _names = Shared.Names();
    private readonly Option<string> _format = Shared.Format();
    private readonly Option<string[]> _despite = new("--despite")
    {
        Description = "Print although this rule is broken, as the findings name it; once for each rule",
    };

    private readonly Option<bool> _white = new("--white-plate")
    {
        Description = "The plate of white ink instead, black where white is laid under the label's colours on dark or clear stock",
    };

    /// <summary>Adds what is laid out for a printer with white ink, to the verbs that write labels themselves.</summary>
    public void AddWhitePlateTo(Command verb) => verb.Options.Add(_white);

    /// <summary>Whether the white plate is wanted and not the label.</summary>
    public bool IsWhitePlate(ParseResult r) => r.GetValue(_white);

    /// <summary>What is to be drawn of a label: itself, or its plate of white ink.</summary>
    /// <exception cref="InputException">It does not fit, or no white is laid under it.</exception>
    public LabelLayout Drawn(ParseResult r, LabelJob job) =>
        IsWhitePlate(r) ? WhitePlate.Of(job.Fit.OrRefuse()) : job.Fit.OrRefuse();

    public PrintInputs AddTo(Command verb)
    {
        verb.Arguments.Add(_recipe);
        foreach (var option in new Option[] { _workshop, _market, _design, _lot, _on, _variant, _names, _despite, _format })
            verb.Options.Add(option);
        return this;
    }

    /// <summary>Whether the answer is wanted as JSON.</summary>
    public bool Json(ParseResult r) => Shared.IsJson(r, _format);

    /// <summary>Says, where JSON is wanted, what was written of which products; in words the file itself says it.</summary>
    public void Say(ParseResult r, string path, IEnumerable<LabelJob> jobs, LotCode lot) =>
        Shared.Say(r, _format,
            () => new JsonObject
            {
                ["file"] = path,
                ["lot"] = lot.ToString(),
                ["products"] = jobs.ToJson(j => new JsonObject
                {
                    ["name"] = j.Product.Name,
                    ["design"] = j.Fit is Fit.Fits fits ? fits.Layout.Design.Id : null
                })
            });

    /// <summary>Prints, and says what has to be known about the books.</summary>
    /// <param name="r">The words of the command.</param>
    /// <param name="labels">What is printed.</param>
    /// <param name="write">Writes the paper.</param>
    /// <param name="binds">Whether the paper binds its lots to their products, so that it is written down in the books.</param>
    /// <param name="paper">What the paper is called in the books where it is printed over a broken rule.</param>
    /// <exception cref="StoppedException">What was laid out breaks a rule that the call does not name.</exception>
    public void Print(ParseResult r, ImmutableArray<LabelsToPrint> labels, DateOnly on, Action write, bool binds = false,
        string paper = "Label")
    {
        var folder = labels[0].Job.Workshop.Folder;
        var book = (binds || r.GetValue(_despite) is { Length: > 0 }) && OpenBooks.Exists(folder) ? OpenBooks.Open(folder) : null;
        var outcome = PrintLabels.Run(new PrintCall(labels, [.. r.GetValue(_despite) ?? []], on, Environment.UserName) { Paper = paper },
            book, write);
        StopWhereBroken(outcome, labels.Any(l => l.Job.Product.Weighed is not null));
        if (book is null)
            return;
        foreach (var (lot, products) in outcome.Shared)
            Console.Error
                .WriteLine(
                    $"Note: the lot {lot} stands on labels of {string.Join(", ", products)}. A lot is one product's: give each its own.");
        if (outcome.NotRecorded is { } problem)
            Console.Error.WriteLine($"Note: that these labels were made is not in the books. {problem}");
    }

    /// <summary>What the sheets' margin says of rules that the call prints over; null where none is broken.</summary>
    public string? Note(ParseResult r, IEnumerable<LabelJob> jobs) => PrintLabels.Note(jobs, [.. r.GetValue(_despite) ?? []]);

    /// <summary>Stops where what was laid out breaks a rule that the call does not name.</summary>
    /// <exception cref="StoppedException">It does.</exception>
    public static void StopWhereBroken(PrintOutcome outcome, bool weighed)
    {
        if (outcome.IsStopped)
            throw new StoppedException(
                $"Nothing was printed: {(outcome.Open.Length == 1 ? "a rule is" : $"{outcome.Open.Length} rules are")} broken{(weighed ? " by what was weighed" : "")}. Mend it, or print all the same with {string.Join(' ', outcome.Open.Select(f => $"--despite {f.Rule}").Distinct())}", outcome.Open);
    }

    /// <summary>Goes from the recipe to the laid-out label of each of its products.</summary>
    public (ImmutableArray<LabelJob> Jobs, LotCode Lot, DateOnly On) Prepare(ParseResult r) => Prepare(r, r.GetValue(_recipe), null);

    /// <summary>Goes from a recipe, perhaps of a lot of its own, to the laid-out label of each of its products.</summary>
    public (ImmutableArray<LabelJob> Jobs, LotCode Lot, DateOnly On) Prepare(ParseResult r, string? named, string? ownLot)
    {
        if (named is null)
            throw new InputException("call.no-recipe-named");
        if ((ownLot ?? r.GetValue(_lot)) is not { } lotText)
            throw new InputException("call.no-lot", ("named", named));
        Prewarm.Begin(() => Shipped.Dictionary, () => Shipped.Markets);
        if (Shared.SetNamed(named, r.GetValue(_workshop)) is var (shop, set))
            return OfSet(r, shop, set, Shared.Need(LotCode.Parse(lotText)));
        var products = Shared.Products(named, r.GetValue(_workshop), r.GetValue(_variant));
        var lot = Shared.Need(LotCode.Parse(lotText));
        var on = Shared.Date(r.GetValue(_on));
        var market = Shared.MarketOf(r.GetValue(_market), products[0].Workshop);
        var names = Shared.Need(NameStyleText.Parse(r.GetValue(_names)!));
        var jobs = Product.Each(LotBinding.Bind(products, lot, market, on),
            p => LabelJob.Prepare(p, market, r.GetValue(_design), lot, on, names));
        foreach (var missing in jobs.SelectMany(j => j.LeftOut.Select(m => jobs.Length > 1 ? $"{j.Product.Name}: {m}" : m)))
            Console.Error.WriteLine($"Note: {missing}");
        foreach (var job in jobs.Where(j => !j.IsPackageKnown).DistinctBy(j => j.Product.Recipe.File))
            Console.Error
                .WriteLine(
                    $"Note: {job.Product.Recipe.File} does not say what its package is, so the label's front was taken for the whole "
                        + $"front; a larger one may want larger letters. Measure it and write: package: {UsualPackage.For(job.Kind)}");
        return (jobs, lot, on);
    }

    // The label of a gift set carries the package's own lot; each piece in it has its own.
    private (ImmutableArray<LabelJob> Jobs, LotCode Lot, DateOnly On) OfSet(ParseResult r, Workshop workshop, GiftSet set, LotCode lot)
    {
        var on = Shared.Date(r.GetValue(_on));
        if (r.GetValue(_design) is { } design)
            throw new InputException("call.set-one-design", ("name", set.Name), ("design", design));
        var job = SetLabel.Prepare(workshop, set, Shared.MarketOf(r.GetValue(_market), workshop), lot, on,
            Shared.Need(NameStyleText.Parse(r.GetValue(_names)!)));
        foreach (var missing in job.LeftOut)
            Console.Error.WriteLine($"Note: {missing}");
        return ([job], lot, on);
    }

    /// <summary>The folder of the workshop that the call is about.</summary>
    public string Folder(ParseResult r) => Shared.FolderOf(r.GetValue(_recipe), r.GetValue(_workshop));

    /// <summary>The recipe named by itself, or null.</summary>
    public string? Recipe(ParseResult r) => r.GetValue(_recipe);

    /// <summary>The document's title and time. The time is the date judged by, so that the same input gives the same bytes.</summary>
    public static DocumentInfo Info(ImmutableArray<LabelJob> jobs, LotCode lot, DateOnly on) =>
        Info(jobs[0], lot, on) with { Title = string.Join("; ", jobs.Select(j => Info(j, lot, on).Title)) };

    /// <summary>The same for one product's document.</summary>
    public static DocumentInfo Info(LabelJob job, LotCode lot, DateOnly on) =>
        new($"{job.Content.ProductName}, lot {lot}", on);
}
