using LabelForge.Copying;

namespace LabelForge.Cli.Verbs;

/// <summary><c>recipe copy</c>: a new product or scent in one step.</summary>
internal static class RecipeVerbs
{
    public static Command Build() => new("recipe", "Makes new products out of those that are there") { Copy() };

    private static Command Copy()
    {
        var from = new Argument<string>("FROM") { Description = "The product to copy: bramble-bar, or \"meadow-bar/Moss Lane\"" };
        var name = new Argument<string>("NAME") { Description = "The new product's name on the label" };
        var scent = new Option<string?>("--scent") { Description = "The fragrance that takes the place of the old one" };
        var hue = new Option<int?>("--hue") { Description = "The hue of its label, 0 to 360 degrees" };
        var line = new Option<string?>("--line")
        {
            Description = "What it smells of, in a few words on the front (default: as the old one, but nothing beside another scent)",
        };
        var item = new Option<string?>("--item")
        {
            Description = "Its own item number (default: none; the old one stays the old product's)",
        };
        var price = new Option<string?>("--price") { Description = "What a piece is sold for (default: as the old one)" };
        var workshop = Shared.Workshop();
        var format = Shared.Format();
        var verb = new Command("copy", "Copies a product, its label and its price, under a new name, with another scent and hue")
        {
            from, name, scent, hue, line, item, price, workshop, format,
        };
        verb.SetAction(r => Exit.Run(() =>
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
        }));
        return verb;
    }
}
