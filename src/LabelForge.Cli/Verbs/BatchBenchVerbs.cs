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
        var recipe = Shared.RecipeArgument();
        var pieces = new Option<int?>("--pieces") { Description = "Scale the recipe to this many pieces" };
        var mass = new Option<string?>("--mass") { Description = "Scale the recipe to this mass: \"2 kg\"" };
        var moulds = new Option<string?>("--moulds") { Description = "Scale the recipe to fill moulds: \"6 x 113 g, 12 x 3 oz\"" };
        var lot = Shared.Lot(required: false);
        var variant = Shared.Variant();
        var options = new BookOptions();
        var verb = options.AddAskingTo(new Command("start", "Begins a batch in the books: scaled, lots proposed, the recipe frozen")
        {
            recipe, pieces, mass, moulds, lot, variant,
        });
        verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var named = r.GetValue(variant) is { } name ? $"{r.GetValue(recipe)}/{name.Trim()}" : r.GetValue(recipe)!;
            var read = workshop.ProductOf(named).Recipe;
            if (new object?[] { r.GetValue(pieces), r.GetValue(mass), r.GetValue(moulds) }.Count(o => o is not null) > 1)
                throw new InputException("call.two-sizes");
            var batch = r.GetValue(pieces) is { } count ? BatchSize.ToPieces(workshop, read, count)
                : r.GetValue(mass) is { } text ? BatchSize.ToMass(workshop, read, MassOf(text))
                : r.GetValue(moulds) is { } filled ? BatchSize.ToMoulds(workshop, read, filled)
                : BatchSize.ToPieces(workshop, read, read.Pieces);
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
        return verb;
    }

    public static Command Weigh()
    {
        var lot = LotArgument();
        var material = new Argument<string>("MATERIAL") { Description = "The material's id" };
        var amount = new Argument<string>("AMOUNT") { Description = "What the scale showed: \"452.3 g\"" };
        var from = new Option<string?>("--from") { Description = "The material lot, for example M3 (default: first expired, first out)" };
        var options = new BookOptions();
        var verb = options.AddAskingTo(new Command("weigh", "Records an amount weighed into a batch, and says what it changes")
        {
            lot, material, amount, from,
        });
        verb.OpensBooks(r =>
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
        return verb;
    }

    public static Command Close()
    {
        var lot = LotArgument();
        var made = new Option<int>("--made")
        {
            Description = "Pieces that came out, rejected ones too; of a pot: of each of its batches that is still open",
            Required = true,
        };
        var rejected = new Option<int>("--rejected") { Description = "Of these, not to be sold" };
        var yield = new Option<string?>("--yield") { Description = "What all pieces weigh together" };
        var options = new BookOptions();
        var verb = options.AddAskingTo(new Command("close", "Finishes a batch: what came out, and what was lost")
        {
            lot, made, rejected, yield,
        });
        verb.OpensBooks(r =>
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
        return verb;
    }

    public static Command Note()
    {
        var lot = LotArgument();
        var what = new Argument<string>("WHAT") { Description = "What happened otherwise than planned, and what was done" };
        var options = new BookOptions();
        var verb = options.AddTo(new Command("note", "Records a deviation") { lot, what });
        verb.OpensBooks(r =>
        {
            var deviation = Production.Note(BookOptions.Book(options.Workshop(r)), BookOptions.Lot(r.GetValue(lot)!), r.GetValue(what)!,
                options.On(r), options.By(r), options.Note(r));
            var code = BookOptions.Lot(r.GetValue(lot)!);
            return options.Told(r, new JsonObject { ["deviation"] = deviation.Id, ["lot"] = code, ["what"] = deviation.What },
                "Noted.");
        });
        return verb;
    }

    public static Command Show()
    {
        var lot = LotArgument();
        var options = new BookOptions();
        var verb = options.AddReadingTo(new Command("show", "The record of a batch: planned, weighed, lots, deviations, what came out")
        {
            lot,
        }, dated: false);
        verb.OpensBooks(r =>
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
        return verb;
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

    internal static Argument<string> LotArgument() =>
        new("LOT") { Description = "The lot code of the batch; at the bench also the number of a pot" };

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
