using LabelForge.Checks;
using LabelForge.Cli.Handover;
using LabelForge.Days;
using LabelForge.Pouring;
using LabelForge.Records.Books;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary>What <c>batch</c> does in the books: start, weigh, note, close, show.</summary>
internal static class BatchBenchVerbs
{
    public static Command Start()
    {
        var verb = new Verb("start", "Begins a batch in the books: scaled, lots proposed, the recipe frozen");
        var recipe = verb.Recipe();
        var pieces = verb.Option<int?>("--pieces", "Scale the recipe to this many pieces");
        var mass = verb.Option<string?>("--mass", "Scale the recipe to this mass: \"2 kg\"");
        var moulds = verb.Option<string?>("--moulds", "Scale the recipe to fill moulds: \"6 x 113 g, 12 x 3 oz\"");
        var lot = verb.Lot(required: false);
        var variant = verb.Variant();
        var options = new BookOptions().AddAskingTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var named = r.GetValue(variant) is { } name ? $"{r.GetValue(recipe)}/{name.Trim()}" : r.GetValue(recipe)!;
            var read = workshop.ProductOf(named).Recipe;
            var batch = Sized(workshop, read, r.GetValue(pieces), r.GetValue(mass), r.GetValue(moulds));
            var on = options.On(r);
            options.Ask(r, Slips.OfBatch(batch.Total.Grams, batch.Recipe.Pieces, on, BookOptions.Today));
            var book = BookOptions.Book(workshop);
            var code = r.GetValue(lot) is { } given ? BookOptions.Lot(given) : book.Ask(books => NextLot.Of(books, on, read).ToString());
            var changed = book.Ask(books => books.LastBatch(read.Id, read.VariantName)) is { } last
                && workshop.ProductOf(named) is var product
                ? ChangedLimits.OfCertificates(product, last)
                    .AddRange(ChangedLimits.OfLaw(product, last, Shared.MarketOf(null, workshop), on)) : [];
            foreach (var change in changed)
                Console.Error.WriteLine($"Note: {change.Told}");
            var started = Production.Start(book,
                FrozenRecipe.Of(workshop, batch, workshop.Business.Market, BatchStatement.Of(workshop, batch, on)), code, on,
                options.By(r), options.Note(r));
            return book.Ask(books =>
            {
                var proposals = Production.Propose(books, batch.Lines.Select(l => (l.Material.Id, l.Mass.Grams)), on);
                if (options.Json(r))
                    JsonOut.Write(new JsonObject
                    {
                        ["lot"] = code,
                        ["recipe"] = read.Id,
                        ["pieces"] = started.PiecesPlanned,
                        ["grams"] = Math.Round(batch.Total.Grams, 3),
                        ["materials"] = proposals.ToJson(p => new JsonObject
                        {
                            ["material"] = p.Material,
                            ["grams"] = Math.Round(p.Needed, 3),
                            ["take"] = p.Take
                                .ToJson(t => new JsonObject { ["from"] = books.Bottle(t.From.Id), ["grams"] = Math.Round(t.Grams, 3) }),
                            ["missing"] = Math.Round(p.Missing, 3)
                        }),
                        ["changed"] = changed
                            .ToJson(c => new JsonObject { ["material"] = c.Material, ["since"] = c.Lot, ["told"] = c.Told })
                    });
                else
                    Tell(code, started, batch, proposals, books);
                return Exit.Done;
            });
        });
    }

    public static Command Weigh()
    {
        var verb = new Verb("weigh", "Records an amount weighed into a batch, and says what it changes");
        var lot = LotArgument(verb);
        var material = verb.Argument<string>("MATERIAL", "The material's id");
        var amount = verb.Argument<string>("AMOUNT", "What the scale showed: \"452.3 g\"");
        var from = verb.Option<string?>("--from", "The material lot, for example M3 (default: first expired, first out)");
        var options = new BookOptions().AddAskingTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            var what = workshop.Material(r.GetValue(material)!, "the call", 0);
            var grams = Shared.Need(MaterialAmount.Read(what, r.GetValue(amount)!, workshop.Dictionary));
            var code = BookOptions.Lot(r.GetValue(lot)!);
            var bottle = r.GetValue(from) is { } m ? BookOptions.MaterialLot(m) : (int?)null;
            if (PotVerbs.IsPot(book, code))
                return PotVerbs.Weigh(r, options, book, code, what, grams, bottle);
            options.Ask(r, book.Ask(books => Slips.OfWeighing(books, code, what.Id, grams, bottle, options.On(r), BookOptions.Today)));
            var written = Production.Weigh(book, code, what.Id, grams, bottle, options.On(r), options.By(r), options.Note(r));
            return book.Ask(books =>
            {
                var batch = books.BatchOf(code);
                var line = Production.Compare(books, batch).First(l => l.Line.Material == what.Id);
                var changes = Changes(workshop, books, batch, options.On(r));
                var expired = written.Where(w => w.ReceiptId is { } id && books.ReceiptOf(id).BestBefore < w.On)
                    .Select(w => books.Bottle(w.ReceiptId!.Value)).ToArray();
                var broken = LotFindings.BrokenAtTheBench(workshop, books, batch, workshop.Market, options.On(r));
                var flagged = line.Off || changes.Count > 0 || expired.Length > 0 || broken.Length > 0;
                if (options.Json(r))
                {
                    JsonOut.Write(new JsonObject
                    {
                        ["lot"] = code,
                        ["material"] = what.Id,
                        ["from"] = written.ToJson(w => w.ReceiptId is { } id ? books.Bottle(id) : null),
                        ["planned"] = Math.Round(line.Line.Grams, 3),
                        ["weighed"] = line.Weighed,
                        ["outOfTolerance"] = line.Off,
                        ["expired"] = expired.ToJson(),
                        ["labelChanges"] = changes.ToJson(),
                        ["findings"] = broken.ToJson(JsonOut.Of)
                    });
                    return flagged ? Exit.FindingStands : Exit.Done;
                }
                foreach (var w in written)
                    Console.WriteLine(Invariant($"{w.Grams:0.###} g of {what.Name}{(w.ReceiptId is { } id ? $" from {books.Bottle(id)}" : "")} into lot {code}"));
                if (line.Off)
                    Console.WriteLine(Invariant($"FLAG: {line.Weighed:0.###} g stand where the recipe has {line.Line.Grams:0.###} g, {(FrozenRecipe.FromJson(batch.Frozen).Tolerance is { } own ? Invariant($"more off than the recipe's {own * 100:0.##} %") : Invariant($"more than {Production.UsualTolerance * 100:0.#} % off (common practice; a recipe may say: tolerance: 1 %)"))}. Weigh the rest, or note why: labelforge batch note {code} \"...\""));
                foreach (var past in expired)
                    Console.WriteLine($"FLAG: {past} is past its date. Note why it was used: labelforge batch note {code} \"...\"");
                foreach (var change in changes)
                    Console.WriteLine($"LABEL: {change}");
                TellBroken(broken);
                return flagged ? Exit.FindingStands : Exit.Done;
            });
        });
    }

    public static Command Close()
    {
        var verb = new Verb("close", "Finishes a batch: what came out, and what was lost");
        var lot = LotArgument(verb);
        var made = verb.Option<int>("--made",
            "Pieces that came out, rejected ones too; of a pot: of each of its batches that is still open", required: true);
        var rejected = verb.Option<int>("--rejected", "Of these, not to be sold");
        var yield = verb.Option<string?>("--yield", "What all pieces weigh together");
        var options = new BookOptions().AddAskingTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            var code = BookOptions.Lot(r.GetValue(lot)!);
            decimal? grams = r.GetValue(yield) is { } y ? MassOf(y).Grams : null;
            if (PotVerbs.IsPot(book, code))
                return PotVerbs.Close(r, options, workshop, book, code, r.GetValue(made), r.GetValue(rejected), grams);
            options.Ask(r, book.Ask(books => Slips.OfClosing(books, code, r.GetValue(made), options.On(r), BookOptions.Today)));
            var closing = Production.Close(book, code, r.GetValue(made), r.GetValue(rejected), grams, options.On(r), options.By(r),
                options.Note(r));
            foreach (var packed in ClosePacking.Use(workshop, book, [(code, closing.Made - closing.Rejected)], options.On(r),
                options.By(r)))
                Console.Error.WriteLine($"Note: {packed}");
            var (weighed, broken) = book.Ask(books => (books.WeighedInto(books.BatchOf(code)).Sum(w => w.Grams),
                LotFindings.BrokenAtTheBench(workshop, books, books.BatchOf(code), workshop.Market, options.On(r))));
            decimal? lost = grams is { } g ? weighed - g : null;
            if (options.Json(r))
                JsonOut.Write(new JsonObject
                {
                    ["lot"] = code,
                    ["made"] = closing.Made,
                    ["rejected"] = closing.Rejected,
                    ["forSale"] = closing.Made - closing.Rejected,
                    ["weighedIn"] = weighed,
                    ["yield"] = grams,
                    ["loss"] = lost,
                    ["findings"] = broken.ToJson(JsonOut.Of)
                });
            else
                Console.WriteLine(Invariant($"Lot {code}: {closing.Made - closing.Rejected} pieces for sale, {closing.Rejected} rejected; {weighed:0.###} g went in{(lost is { } l ? Invariant($", {grams:0.###} g came out, {l:0.###} g lost ({(weighed == 0 ? 0 : l / weighed * 100):0.#} %)") : "")}."));
            if (lost < 0)
                Console.Error.WriteLine("More came out than went in: check the scale, the count and the weighings.");
            if (!options.Json(r))
                TellBroken(broken);
            return lost < 0 || broken.Length > 0 ? Exit.FindingStands : Exit.Done;
        });
    }

    public static Command Note()
    {
        var verb = new Verb("note", "Records a deviation");
        var lot = LotArgument(verb);
        var what = verb.Argument<string>("WHAT", "What happened otherwise than planned, and what was done");
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var deviation = Production.Note(BookOptions.Book(options.Workshop(r)), BookOptions.Lot(r.GetValue(lot)!), r.GetValue(what)!,
                options.On(r), options.By(r), options.Note(r));
            var code = BookOptions.Lot(r.GetValue(lot)!);
            return options.Told(r, new JsonObject { ["deviation"] = deviation.Id, ["lot"] = code, ["what"] = deviation.What },
                "Noted.");
        });
    }

    public static Command Show()
    {
        var verb = new Verb("show", "The record of a batch: planned, weighed, lots, deviations, what came out");
        var lot = LotArgument(verb);
        var options = new BookOptions().AddReadingTo(verb, dated: false);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            return BookOptions.Book(workshop).Ask(books =>
            {
                var code = BookOptions.Lot(r.GetValue(lot)!);
                Batch[] batches = books.BatchesOfPot(code).ToArray() is { Length: > 0 } poured ? poured : [books.BatchOf(code)];
                if (batches.Length > 1 && !options.Json(r))
                    Console.WriteLine($"Pot {code}: {batches.Length} batches");
                if (options.Json(r))
                    JsonOut.Write(batches.Length == 1
                        ? BatchRecordText.Json(books, batches[0])
                        : new JsonObject { ["pot"] = code, ["batches"] = batches.ToJson(b => BatchRecordText.Json(books, b)) });
                else
                    Array.ForEach(batches, b => BatchRecordText.Write(books, b));
                return Exit.Done;
            });
        });
    }

    // The weighing stands in the books by now: what keeps the label from being settled must not look as if nothing was written.
    private static IReadOnlyList<string> Changes(Workshop workshop, IBooks books, Batch batch, DateOnly on)
    {
        try
        {
            return LotProducts.Weighed(workshop.ProductsOf(batch.Recipe), books, batch, workshop.Market, on).Weighed!.Changes;
        }
        catch (InputException e)
        {
            return [$"Whether the label still fits cannot be told: {e.Message}"];
        }
    }

    /// <summary>For the batch sheet: which lots to take a material from, first to expire first;
    /// nothing where there are no books.</summary>
    internal static Func<string, string?>? TakeFrom(Print.Jobs.LabelJob job, DateOnly on) => OpenBooks.Exists(job.Workshop.Folder)
        ? OpenBooks.Open(job.Workshop.Folder).Ask(books => ProposedLots.For(books, job.Batch, on))
        : null;

    private static void TellBroken(IEnumerable<Finding> broken)
    {
        foreach (var finding in broken)
        {
            Console.WriteLine("MUST, by what was weighed:");
            Report.Write(finding);
        }
    }

    internal static Argument<string> LotArgument(Verb verb) =>
        verb.Argument<string>("LOT", "The lot code of the batch; at the bench also the number of a pot");

    private static BatchFormula Sized(Workshop workshop, Recipe recipe, int? pieces, string? mass, string? moulds) =>
        (pieces, mass, moulds) switch
        {
            (null, { } text, null) => BatchSize.ToMass(workshop, recipe, MassOf(text)),
            (null, null, { } filled) => BatchSize.ToMoulds(workshop, recipe, filled),
            (_, null, null) => BatchSize.ToPieces(workshop, recipe, pieces ?? recipe.Pieces),
            _ => throw new InputException("call.two-sizes"),
        };

    private static Mass MassOf(string text)
    {
        var amount = Shared.Need(Amount.Parse(text));
        return amount.IsMass ? amount.AsMass() : throw new InputException("call.not-a-mass", ("text", text));
    }

    private static string Expired(IBooks books, string material, DateOnly on)
    {
        var past = books.InStock(material).Where(s => s.Receipt.BestBefore < on).Select(s => books.Bottle(s.Receipt.Id)).ToArray();
        return past.Length == 0 ? "" : $" (past their date: {string.Join(", ", past)})";
    }

    private static void Tell(string code, Batch started, BatchFormula batch, IReadOnlyList<Proposal> proposals, IBooks books)
    {
        Console.WriteLine(Invariant($"Lot {code}: {started.Product}, {started.PiecesPlanned} pieces, {batch.Total.Grams:0.#} g"));
        foreach (var p in proposals)
        {
            var kept = books.IsKept(p.Material);
            var take = string.Join(", ",
                p.Take
                    .Select(
                        t =>
                            Invariant($"{books.Bottle(t.From.Id)} {t.Grams:0.##} g{(t.From.BestBefore is { } b ? Invariant($" (best before {b:yyyy-MM-dd})") : "")}")));
            Console.WriteLine(Invariant($"  {p.Needed,10:0.00} g  {p.Material}: {(kept ? take : "not kept in stock")}{(kept && p.Missing > 0 ? Invariant($" SHORT by {p.Missing:0.##} g{Expired(books, p.Material, started.On)}") : "")}"));
        }
        Console.WriteLine($"Print the sheet: labelforge batch {started.Recipe} --lot {code} --out batch.pdf");
    }
}
