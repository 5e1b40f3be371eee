using LabelForge.Copying;

namespace LabelForge.Cli.Verbs;

/// <summary><c>recipe copy</c>: a new product or scent in one step.</summary>
internal static class RecipeVerbs
{
    public static Command Build() => new("recipe", "Makes new products out of those that are there") { Copy() };

    private static Command Copy()
    {
        var verb = new Verb("copy", "Copies a product, its label and its price, under a new name, with another scent and hue");
        var from = verb.Argument<string>("FROM", "The product to copy: bramble-bar, or \"meadow-bar/Moss Lane\"");
        var name = verb.Argument<string>("NAME", "The new product's name on the label");
        var scent = verb.Option<string?>("--scent", "The fragrance that takes the place of the old one");
        var hue = verb.Option<int?>("--hue", "The hue of its label, 0 to 360 degrees");
        var line = verb.Option<string?>("--line",
            "What it smells of, in a few words on the front (default: as the old one, but nothing beside another scent)");
        var item = verb.Option<string?>("--item", "Its own item number (default: none; the old one stays the old product's)");
        var price = verb.Option<string?>("--price", "What a piece is sold for (default: as the old one)");
        var workshop = verb.Workshop();
        var format = verb.Format();
        return verb.Runs(r =>
        {
            var opened = Shared.OpenFolder(r.GetValue(workshop) ?? Directory.GetCurrentDirectory());
            var sum = r.GetValue(price) is { } p
                ? BookOptions.Money(p, "--price").ToString(System.Globalization.CultureInfo.InvariantCulture)
                : null;
            var (product, file) = RecipeCopy.Write(opened,
                new RecipeCopyWish(r.GetValue(from)!, r.GetValue(name)!, r.GetValue(scent), r.GetValue(hue), r.GetValue(line),
                    r.GetValue(item), sum));
            if (r.GetValue(format) == "json")
                JsonOut.Write(new JsonObject { ["product"] = product, ["file"] = file });
            else
                Console.WriteLine(
                    $"{product}, in {file}. Look at it: labelforge gallery \"{product}\" --out look.pdf; check it: "
                        + $"labelforge check \"{product}\"");
            return Exit.Done;
        });
    }
}
