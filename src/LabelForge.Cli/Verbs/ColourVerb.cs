using LabelForge.Colours;
using LabelForge.Print;
using LabelForge.Print.Output;
using LabelForge.Print.Scans;
using LabelForge.Web.Editing;

namespace LabelForge.Cli.Verbs;

/// <summary><c>colour</c>: what colour a product will have, the colourants for a wanted shade, and a colour picked from a photo.</summary>
internal static class ColourVerb
{
    private const string Guess = "A guess from colours on a screen: mix a small piece first.";

    public static Command Build()
    {
        var verb = new Verb("colour",
            "The colour that a product's colourants give, how much of which comes nearest to a shade, and a colour picked from a photo");
        var recipe = verb.Recipe(required: false);
        var want = verb.Option<string?>("--want", "The shade wanted: \"#c9a0b4\"");
        var photo = verb.Option<string?>("--photo",
            "A photo (PNG or JPEG) to pick a colour from: the shade wanted, or with --for a material's own");
        var at = verb.Option<string?>("--at", "Where in the photo, in hundredths of its width and height: 50,50 (default: the middle)");
        var white = verb.Option<string?>("--white", "Where a white sheet lies in the photo: its light is taken out");
        var into = verb.Option<string?>("--for", "The material whose swatch the photo shows; it is written into its file");
        var folder = verb.Workshop();
        var variant = verb.Variant();
        var market = verb.Market();
        var on = verb.On();
        var format = verb.Format();
        return verb.Runs(r =>
        {
            var json = r.GetValue(format) == "json";
            var picked = r.GetValue(photo) is { } file
                ? PhotoColour.Of(ColourPicture.Read(file), Place(r.GetValue(at)) ?? PicturePlace.Middle, Place(r.GetValue(white)))
                : (Colour?)null;
            if (r.GetValue(recipe) is not { } named)
                return Photo(picked ?? throw new InputException("call.colour-of-what"), r.GetValue(into), r.GetValue(folder),
                    json);
            var products = Shared.Products(named, r.GetValue(folder), r.GetValue(variant));
            var wanted = r.GetValue(want) is { } text
                ? Colour.Parse(text) ?? throw new InputException("look.not-a-colour", ("text", text))
                : picked;
            if (wanted is not { } shade)
                return Tell(products, json);
            var where = Shared.MarketOf(r.GetValue(market), products[0].Workshop);
            var answers = Product.Each(products, p => ProductColours.Nearest(p, shade, where, Shared.Date(r.GetValue(on))));
            Report.Each(products, answers, json, (_, a) => Data(a), (_, a) => Write(a));
            return Exit.Done;
        });
    }

    private static PicturePlace? Place(string? text) =>
        text is null ? null : PicturePlace.Parse(text) ?? throw new InputException("look.photo-place", ("text", text));

    private static int Photo(Colour picked, string? into, string? folder, bool json)
    {
        string? written = null;
        if (into is not null)
        {
            var workshop = Shared.OpenFolder(folder ?? Directory.GetCurrentDirectory());
            if (!workshop.Materials.TryGetValue(into, out var material))
                throw new InputException("call.no-such-material", ("material", into));
            written = material.File;
            var path = Path.Combine(workshop.Folder, written);
            var text = YamlEdit.Set(File.ReadAllText(path), ["swatch"], picked.ToString());
            AtomicFile.Write(path, text);
        }
        if (json)
            JsonOut.Write(new JsonObject { ["colour"] = picked.ToString(), ["file"] = written });
        else
            Console.WriteLine(written is null
                ? picked.ToString()
                : $"{picked}: written into {written} as its swatch. With \"swatch at: 0.5 %\" say what share of the product it shows.");
        return Exit.Done;
    }

    private static int Tell(IReadOnlyList<Product> products, bool json)
    {
        var all = products.Select(p => (Product: p, Gives: ProductColours.Of(p), Ground: ProductColours.Ground(p))).ToList();
        if (json)
        {
            JsonOut.Write(
                [.. all.Select(a => (a.Product.Name, new JsonObject
                {
                    ["colour"] = a.Gives?.ToString(),
                    ["ground"] = a.Ground.ToString(),
                }))]);
            return Exit.Done;
        }
        foreach (var (product, gives, _) in all)
        {
            Console.WriteLine($"{product.Recipe.Name}: {(gives is { } colour ? $"about {colour}" : "no colourant whose colour is known")}");
            foreach (var line in product.Batch.Lines.Where(l => l.Material.Kind == MaterialKind.Colourant))
            {
                var known = ProductColours.Known(line.Material);
                Console.WriteLine(Invariant($"  {line.Mass.Grams,8:0.##} g  {line.Material.Name}: {(known.Pigment is { } p ? $"{p.Seen} at {p.At * 100:0.###} %{(known.IsByName ? ", by its name alone" : "")}" : "colour not known")}"));
            }
        }
        Console.WriteLine(Guess);
        return Exit.Done;
    }

    private static JsonObject Data(ShadeAnswer answer) => new JsonObject
    {
        ["wanted"] = answer.Wanted.ToString(),
        ["gives"] = answer.Gives.ToString(),
        ["off"] = Math.Round(answer.Off, 4),
        ["near"] = answer.IsNear,
        ["amounts"] = answer.Amounts.ToJson(a => new JsonObject
        {
            ["material"] = a.Material.Id,
            ["grams"] = a.Mass.Grams,
            ["spoons"] = a.Spoons,
        }),
        ["notAllowed"] = answer.NotAllowed.ToJson(n => new JsonObject { ["material"] = n.Material.Id, ["why"] = n.Why }),
        ["unknown"] = answer.Unknown.ToJson(m => m.Id),
    };

    private static void Write(ShadeAnswer answer)
    {
        Console.WriteLine(answer.Amounts.IsEmpty
            ? $"Nearest to {answer.Wanted} is the base by itself: {answer.Gives}."
            : $"Nearest to {answer.Wanted}{(answer.IsNear ? "" : ", and still off")}: about {answer.Gives}, with");
        foreach (var amount in answer.Amounts)
            Console.WriteLine($"  {amount.Mass.Grams.ToString("0.##", CultureInfo.InvariantCulture),8} g  {amount.Material.Name}{(amount.Spoons.Length > 0 ? $" ({amount.Spoons})" : "")}");
        foreach (var (material, why) in answer.NotAllowed)
            Console.WriteLine($"Left out: {material.Name}. {why}");
        if (!answer.Unknown.IsEmpty)
            Console.WriteLine($"Colour not known: {string.Join(", ", answer.Unknown.Select(m => m.Name))}.");
        Console.WriteLine(Guess);
    }
}
