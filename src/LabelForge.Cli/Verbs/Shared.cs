using LabelForge.Recipes.Files;

namespace LabelForge.Cli.Verbs;

/// <summary>Options that several verbs share, and what they mean.</summary>
internal static class Shared
{
    public static Argument<string> RecipeArgument(bool required = true) => new("RECIPE")
    {
        Description = "The recipe's file, or its id in the workshop: all its products; one of them as bramble-bar/Moss Wall",
        Arity = required ? ArgumentArity.ExactlyOne : ArgumentArity.ZeroOrOne,
    };

    public static Option<string?> Workshop() =>
        new("--workshop") { Description = "The workshop's folder (default: the one the recipe lies in, or the current one)" };

    public static Option<string?> Market() =>
        new("--market") { Description = $"{Shipped.Markets.Listed}, or the folder of another (default: the workshop's)" };

    /// <summary>The market that the call names, by its id or by a folder that holds a market's files; else the workshop's.</summary>
    public static Market MarketOf(string? named, Workshop workshop) => MarketOf(named, workshop.Markets, workshop.Business.Market);

    /// <summary>The same for a call that needs no workshop: the market of the folder's, where it is one, else the usual one.</summary>
    public static Market MarketOf(string? named, string? folder = null)
    {
        var at = folder ?? Directory.GetCurrentDirectory();
        var markets = Shipped.Markets.With(Path.Combine(at, "markets"));
        return MarketOf(named, markets, File.Exists(Path.Combine(at, "workshop.yaml"))
            ? Business.Read(YamlFile.Read(Path.Combine(at, "workshop.yaml"), "workshop.yaml"), markets).Market
            : markets.Usual.Id);
    }

    private static Market MarketOf(string? named, MarketBook markets, string usual) =>
        named is not null && File.Exists(Path.Combine(named, "market.yaml")) ? markets.At(named) : Need(markets.Find(named ?? usual));

    public static Option<string> Format()
    {
        var option = new Option<string>("--format") { Description = "text or json", DefaultValueFactory = _ => "text" };
        option.AcceptOnlyFromAmong("text", "json");
        return option;
    }

    /// <summary>Whether the answer is wanted as JSON.</summary>
    public static bool IsJson(ParseResult r, Option<string> format) => r.GetValue(format) == "json";

    /// <summary>Says what was done: as data where JSON is wanted, else in words.</summary>
    public static void Say(ParseResult r, Option<string> format, Func<JsonObject> data, params ReadOnlySpan<string> lines)
    {
        if (IsJson(r, format))
        {
            JsonOut.Write(data());
            return;
        }
        foreach (var line in lines)
            Console.WriteLine(line);
    }

    public static Option<string?> Lot(bool required) =>
        new("--lot") { Description = "The lot code (make one with: labelforge lot new)", Required = required };

    public static Option<string?> Design() =>
        new("--design")
        {
            Description =
                "The label design, with an arrangement and a pair of types if you like: bar-2x4+medallion+soft; or its plain setting in a "
                    + "style, light or dark: bar-2x4+bookish+dark (see: labelforge design)",
        };

    public static Option<string> Names() => new("--names")
    {
        Description = "market: as the market names them; dual: for one label sold in us, eu, uk and ca",
        DefaultValueFactory = _ => "market",
    };

    public static Option<string?> On() => new("--on") { Description = "The date to judge by, YYYY-MM-DD (default: today)" };

    public static Option<string?> Variant() =>
        new("--variant")
        {
            Description = "One variant alone, by its name; the same as RECIPE/VARIANT (default: all products of the recipe)",
        };

    public static Option<string?> Since() =>
        new("--since") { Description = "The day the product came on the market, YYYY-MM-DD (default: what the recipe says, else new)" };

    /// <summary>Opens the workshop that a recipe belongs to, and reads the products that the call names.</summary>
    /// <param name="named">The recipe, with the variant behind a solidus for one product alone.</param>
    /// <param name="folder">The workshop's folder, where the call names it.</param>
    /// <param name="variant">The variant, where the call names it apart.</param>
    public static ImmutableArray<Product> Products(string named, string? folder, string? variant = null)
    {
        var workshop = OpenFolder(FolderOf(named, folder));
        return workshop.ProductsOf(variant is null ? named : $"{named}/{variant.Trim()}");
    }

    /// <summary>The workshop's folder: the one that the call names, else the one that the recipe lies in, else the current one.</summary>
    public static string FolderOf(string? named, string? folder) => folder
        ?? (named is not null && ProductNames.FileIn(named) is { } file
            ? Recipes.Workshop.FolderOf(file)
            : Directory.GetCurrentDirectory());

    /// <summary>The gift set that the call names, with its workshop; null where it names a recipe.</summary>
    public static (Workshop Workshop, GiftSet Set)? SetNamed(string named, string? folder)
    {
        var own = Path.GetDirectoryName(Path.GetFullPath(named)) is { } sets
            && Path.GetFileName(sets) == GiftSet.Folder
            && File.Exists(named) ? Path.GetDirectoryName(sets) : null;
        var at = folder ?? own ?? Directory.GetCurrentDirectory();
        if (!Directory.Exists(Path.Combine(at, GiftSet.Folder)))
            return null;
        var workshop = OpenFolder(at);
        return GiftSet.Named(workshop, own is null ? named : Path.GetFullPath(named)) is { } set ? (workshop, set) : null;
    }

    /// <summary>The products with the day they came on the market that the command gives, where it gives one.</summary>
    public static ImmutableArray<Product> OnMarket(ImmutableArray<Product> products, string? since) =>
        since is null ? products : [.. products.Select(p => Product.Planned(p.Workshop, p.Recipe with { OnMarketSince = Date(since) }))];

    /// <summary>Opens a workshop. Where files of materials cannot be read, that is said; what needs none of them goes on.</summary>
    public static Workshop OpenFolder(string folder)
    {
        var workshop = Shipped.Open(folder);
        foreach (var problem in workshop.Unreadable.Values)
            Console.Error.WriteLine($"Left out, as it cannot be read: {problem}");
        return workshop;
    }

    /// <summary>Says which recipes cannot be read, for a verb that goes through all of them and leaves those out.</summary>
    public static void SayRecipesLeftOut(Workshop workshop)
    {
        foreach (var id in workshop.RecipeIds)
        {
            try
            {
                workshop.Recipe(id);
            }
            catch (InputException e)
            {
                Console.Error.WriteLine($"Left out, as it cannot be read: {e.Message}");
            }
        }
    }

    /// <summary>The date to judge by.</summary>
    public static DateOnly Date(string? written)
    {
        if (written is null)
            return DateOnly.FromDateTime(DateTime.Now);
        return IsoDay.Read(written) is { } date
            ? date
            : throw new InputException("call.not-a-date", ("written", written));
    }

    /// <summary>The value, or the refusal as an error.</summary>
    public static T Need<T>(Parsed<T> parsed) => parsed.OrRefuse();
}
