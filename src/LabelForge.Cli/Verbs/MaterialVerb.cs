using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Print.Output;
using LabelForge.Print.Reading;

namespace LabelForge.Cli.Verbs;

/// <summary><c>material</c>: gets a supplier's paper into the workshop.</summary>
internal static class MaterialVerb
{
    public static Command Build()
    {
        var verb = new Verb("material", "Reads a supplier's list of ingredients and writes the material's file");
        var name = verb.Argument<string>("NAME", "What you call the material: \"Clear shea base\"");
        var declaration = verb.Option<string?>("--declaration",
            "The supplier's list of ingredients, copied as it stands (default: read from standard input)");
        var csv = verb.Option<string?>("--csv", "A table with the columns name and share, in place of a text");
        var paper = verb.Option<string?>("--paper", "The supplier's paper as a file, text or PDF, in place of a text");
        var sheet = verb.Option<string?>("--sheet",
            "The safety data sheet, text or PDF: its section 3 is held against the list, and its figures are taken with it");
        var kind = verb.Option<string?>("--kind", "What it is bought as (default: what the names on the paper tell)");
        kind.AcceptOnlyFromAmong("base", "oil", "fragrance", "colourant", "additive", "lye", "water");
        var listed = verb.Option<string>("--listed", "How far the supplier's order can be trusted: strict, label or none", "label");
        listed.AcceptOnlyFromAmong("strict", "label", "none");
        var id = verb.Option<string?>("--id", "The material's id (default: made of its name)");
        var replace = verb.Option<bool>("--replace", "Write over a material that is there");
        var dry = verb.Option<bool>("--dry-run", "Show what was read, and write nothing");
        var workshop = verb.Workshop();
        var format = verb.Format();
        return verb.Runs(r =>
        {
            var matcher = new NameMatcher(Shipped.Dictionary);
            var list = List(r.GetValue(declaration) ?? (r.GetValue(paper) is { } file ? Text(file) : null), r.GetValue(csv), matcher);
            var (matches, apart) = r.GetValue(sheet) is { } data
                ? PaperMerge.Of(matcher.Match(list), matcher.Match(SafetySheet.Read(Text(data), matcher.Knows)))
                : (matcher.Match(list), []);
            list = list with { LeftOut = [.. list.LeftOut, .. apart] };
            var told = r.GetValue(kind) is { } said ? Enum.Parse<MaterialKind>(said, ignoreCase: true) : (MaterialKind?)null;
            var likely = LikelyKind.Of(matches);
            var draft = new MaterialDraft(
                MaterialDraft.IdOf(r.GetValue(id) ?? r.GetValue(name)!), r.GetValue(name)!,
                told ?? likely ?? MaterialKind.Base, Enum.Parse<ListedOrder>(r.GetValue(listed)!, ignoreCase: true), matches)
            { Said = list.Said };
            var path = r.GetValue(dry)
                ? null
                : Free(r.GetValue(workshop) ?? Directory.GetCurrentDirectory(), draft.Id, r.GetValue(replace));
            var yaml = draft.ToYaml(Shipped.Dictionary);
            if (r.GetValue(format) == "json")
                MaterialReport.Json(draft, list, path);
            else
                MaterialReport.Table(draft, list, told is not null ? null
                    : likely is not null ? "That it is bought so is told from its names; --kind says otherwise."
                    : "Its names do not tell what it is bought as, so it stands as a base. If it is none: --kind colourant, oil, "
                        + "fragrance ...");
            if (path is null)
                return Exit.Done;
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            AtomicFile.Write(path, yaml);
            if (r.GetValue(format) == "text")
                MaterialReport.Written(draft, path);
            return Exit.Done;
        });
    }

    private static SuppliedList List(string? declaration, string? csv, NameMatcher matcher)
    {
        if (declaration is not null && csv is not null)
            throw new InputException("call.two-lists");
        if (csv is not null)
            return CsvDeclaration.Read(csv,
                File.Exists(csv) ? File.ReadAllText(csv) : throw new InputException(csv, 0, "call.no-such-table"), matcher.Knows);
        if (declaration is null && !Console.IsInputRedirected)
            throw new InputException("call.no-list-read");
        return SuppliedText.Read(declaration ?? Console.In.ReadToEnd(), matcher.Knows);
    }

    private static string Text(string file)
    {
        if (!File.Exists(file))
            throw new InputException(file, 0, "call.no-such-paper");
        var bytes = File.ReadAllBytes(file);
        return bytes.AsSpan().StartsWith("%PDF"u8) ? PdfRows.Read(bytes, file) : System.Text.Encoding.UTF8.GetString(bytes);
    }

    private static string Free(string folder, string id, bool replace)
    {
        if (!File.Exists(Path.Combine(folder, "workshop.yaml")))
            throw new InputException("call.no-workshop-yaml", ("folder", folder));
        var path = Path.Combine(folder, "materials", id + ".yaml");
        return !File.Exists(path) || replace
            ? path
            : throw new InputException(path, 0, "call.material-there");
    }
}
