using LabelForge.Ingredients.Supplied;

namespace LabelForge.Cli;

/// <summary>What was read from a supplier's paper, as a person checks it against the paper.</summary>
internal static class MaterialReport
{
    private const int WidestName = 44;

    public static void Table(MaterialDraft draft, SuppliedList list, string? aboutKind)
    {
        var width = Math.Clamp(draft.Matches.Max(m => m.Written.Text.Length), 12, WidestName);
        Console.WriteLine($"{draft.Name}: {draft.Kind.ToString().ToLowerInvariant()}, listed {draft.Listed.ToString().ToLowerInvariant()}. Read from the paper:");
        if (aboutKind is not null)
            Console.WriteLine(aboutKind);
        Console.WriteLine();
        Console.WriteLine($"      {"written".PadRight(width)}  {"share",-12} taken as");
        foreach (var match in draft.Matches)
        {
            var written = match.Written;
            var share = written.Share == ShareRange.Unknown ? "" : MaterialDraft.Share(written.Share);
            Console.WriteLine($"  {written.Position,2}. {Short(written.Text).PadRight(width)}  {share,-12} {Taken(match)}");
        }
        foreach (var left in list.LeftOut)
            Console.WriteLine($"\n  Kept as a comment, as it is no name: {left}");
        Console.WriteLine();
    }

    public static void Written(MaterialDraft draft, string path)
    {
        Console.WriteLine($"Wrote {path}");
        var unknown = draft.Matches.Count(m => m.Kind == MatchKind.Unknown);
        if (unknown > 0)
            Console.WriteLine(
                $"{(unknown == 1 ? "One name is" : $"{unknown} names are")} not in the dictionary and marked in the file: look for "
                    + $"SETTLE THIS.");
    }

    public static void Json(MaterialDraft draft, SuppliedList list, string? path) => JsonOut.Write(new JsonObject
    {
        ["id"] = draft.Id,
        ["file"] = path,
        ["kind"] = draft.Kind.ToString().ToLowerInvariant(),
        ["names"] = draft.Matches.ToJson(m => new JsonObject
        {
            ["position"] = m.Written.Position,
            ["written"] = m.Written.Text,
            ["share"] = m.Written.Share == ShareRange.Unknown
                ? null
                : new JsonObject { ["low"] = m.Written.Share.Low.Percent, ["high"] = m.Written.Share.High.Percent },
            ["organic"] = m.Written.Organic,
            ["mayContain"] = m.Written.MayContain,
            ["match"] = m.Kind.ToString().ToLowerInvariant(),
            ["ingredient"] = m.Found?.Key,
            ["nearest"] = m.Nearest.ToJson(n => n.Key),
            ["remarks"] = m.Written.Remarks.ToJson(),
        }),
        ["leftOut"] = list.LeftOut.ToJson(),
    });

    private static string Taken(NameMatch match)
    {
        var remarks = match.Written.Remarks.AsEnumerable();
        if (match.Written.MayContain)
            remarks = remarks.Prepend("may contain");
        if (match.Written.Organic)
            remarks = remarks.Prepend("organic");
        if (match.Kind == MatchKind.Everyday)
            remarks = remarks.Prepend("everyday name");
        if (match.Kind == MatchKind.Other)
            remarks = remarks.Prepend("another name for it");
        var taken = match.Found?.Key ?? (match.Nearest.IsEmpty
            ? "?? not known; nothing is spelt like it"
            : $"?? not known; nearest: {string.Join("; ", match.Nearest.Select(n => n.Key))}");
        return remarks.Any() ? $"{taken}  ({string.Join("; ", remarks)})" : taken;
    }

    private static string Short(string name) => name.Length <= WidestName ? name : name[..(WidestName - 3)] + "...";
}
