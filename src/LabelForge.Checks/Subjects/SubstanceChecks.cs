using LabelForge.Checks.Words;
using LabelForge.Declarations;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>
/// Substances against the market's lists: prohibited, over the limit, not in this kind of product, colours not permitted,
/// warnings that go with a substance. Of a composition by shares, of a label by names.
/// </summary>
/// <remarks>
/// A finding is a must only where it holds whatever the suppliers' missing figures are and however the product is used;
/// else it is a should that says which figure would settle it. A share that no figure bounds is not called too high.
/// </remarks>
internal static class SubstanceChecks
{
    public static void Check(CheckCase label)
    {
        if (label.Dictionary.SubstancesIn(label.Market) is not { } table)
            return;
        if (label.Product is { } product)
            OfComposition(label, product, table);
        else if (label.Binding("substance.conditions") is not null)
            Named(label, table);
    }

    private static void OfComposition(CheckCase label, RecipeFacts facts, SubstanceTable table)
    {
        var touched = facts.Finished.Substances
            .SelectMany(s => Rows(label, table, s.Name, s.Entry).Select(r => new Hit(s, r.Rule, r.Covers)))
            .ToArray();
        var told = new HashSet<(string, string)>();
        foreach (var hit in touched)
            One(hit, label, facts, told);
        SubstanceLimits.Check(touched, label, facts, told);
    }

    private static void One(Hit hit, CheckCase label, RecipeFacts facts, HashSet<(string, string)> alreadyTold)
    {
        var (share, rule, covers) = hit;
        var from = share.From;
        var sure = covers == Applies.Yes && share.IsThere;
        void Tell(string id, params object[] arguments)
        {
            if (alreadyTold.Add((id + string.Join('|', arguments), rule.Citation)))
                label.TellBy(rule.Basis, id, facts.Batch.Recipe.File, arguments);
        }
        if (OfKind(rule, covers, share.Name, facts.Kind) is var (id, told))
            Tell(id, told);
        switch (rule.Verdict)
        {
            case SubstanceVerdict.Prohibited when covers != Applies.No && sure:
                Tell("substance.prohibited", share.Name, from, rule.Words.Length == 0 ? "" : $" ({rule.Words})", rule.Citation);
                break;
            case SubstanceVerdict.Prohibited when covers != Applies.No:
                Tell("substance.prohibited/unproven", share.Name, from, rule.Citation);
                break;
            case SubstanceVerdict.ProhibitedIf when covers != Applies.No:
                Tell("substance.prohibited/if", share.Name, rule.Words, from, rule.Citation);
                break;
            case SubstanceVerdict.Condition when covers != Applies.No:
                Tell("substance.condition", share.Name, rule.Words, rule.Citation);
                break;
            case SubstanceVerdict.Warning when covers != Applies.No
                && share.High.Percent > (rule.Most?.Percent ?? 0)
                && !Says(label, rule.Words):
                var certain = share.Low.Percent > (rule.Most?.Percent ?? 0) || (rule.Most is null && share.IsThere);
                Tell(certain ? "warning.missing" : "warning.missing/perhaps", share.Name, rule.Words, rule.Citation);
                break;
            case SubstanceVerdict.WarningIf when covers != Applies.No && IsFor(label, rule) && !Says(label, rule.Words):
                Tell("warning.missing/perhaps", share.Name, rule.Words, rule.Citation);
                break;
        }
    }

    private static void Named(CheckCase label, SubstanceTable table)
    {
        var conditions = new List<string>();
        foreach (var item in label.Label.Names)
        {
            // Of the colours that nobody here uses only the numbers are held.
            if (item.Known is null
                && !table.Colours.IsEmpty
                && ColourIndexNumber.OnLabel(item.Name) is { } number
                && !table.Colours.Contains(number))
                label.TellBy(Basis.Text, "colour.not-permitted/unlisted", item.Name, item.Name,
                    "Regulation (EC) No 1223/2009, Annex IV, does not list it");
            foreach (var (rule, covers) in Rows(label, table, item.Name, item.Known))
            {
                if (rule.Verdict is SubstanceVerdict.AtMost or SubstanceVerdict.AtMostIf or SubstanceVerdict.Condition
                    && covers != Applies.No)
                    conditions.Add(item.Name);
                else
                    OneNamed(label, item.Name, rule, covers);
            }
        }
        if (conditions.Count > 0)
            label.Tell("substance.conditions", "ingredients", string.Join(", ", conditions.Distinct()));
    }

    // A label that does not say what it is, is most likely of a product for the outside of the body; its words may show more.
    private static Applies Covers(CheckCase label, SubstanceRule rule) =>
        rule.Verdict == SubstanceVerdict.WarningIf ? Applies.Perhaps
        : label.Kind is { } kind ? ProductGroup.Covers(kind, rule.Groups)
        : rule.Groups.Contains("all") || (rule.Verdict == SubstanceVerdict.Prohibited && rule.Groups.Contains("external"))
            || rule.Groups.Any(g => ProductFact.All.TryGetValue(g, out var fact) && label.IsSo(fact) == true)
            ? Applies.Yes
        : Applies.Perhaps;

    // The rows in force that touch a name. What is forbidden in one kind of product is no more asked for as an "if" where the
    // product is of that kind, or may be.
    private static IEnumerable<(SubstanceRule Rule, Applies Covers)> Rows(CheckCase label, SubstanceTable table, string name,
        Ingredient? known)
    {
        var all = table.Of(name, known).Where(r => r.From is null || r.From <= label.Rules.Day)
            .Select(r => (Rule: r, Covers: Covers(label, r))).ToArray();
        return all.Where(r => r.Rule.Verdict != SubstanceVerdict.ProhibitedIf || !all.Any(o => o.Rule.Reference == r.Rule.Reference
            && o.Rule.Verdict == SubstanceVerdict.Not
            && (o.Covers == Applies.Yes || (o.Covers == Applies.Perhaps && label.Kind is not null))));
    }

    private static void OneNamed(CheckCase label, string name, SubstanceRule rule, Applies covers)
    {
        void Tell(string id, params object[] arguments) =>
            label.TellBy(rule.Basis, id, id.StartsWith("warning", StringComparison.Ordinal) ? "warnings" : name, arguments);
        if (OfKind(rule, covers, name, label.Kind) is var (id, told))
            Tell(id, told);
        switch (rule.Verdict, covers)
        {
            case (SubstanceVerdict.Prohibited, Applies.Yes):
                Tell("substance.prohibited/label", name, rule.Words.Length == 0 ? "" : $" ({rule.Words})", rule.Citation);
                break;
            case (SubstanceVerdict.Prohibited, Applies.Perhaps):
                Tell("substance.prohibited/label-if", name, $"the product is one of: {Groups(rule)}{Words(rule)}", rule.Citation);
                break;
            case (SubstanceVerdict.ProhibitedIf, not Applies.No):
                Tell("substance.prohibited/label-if", name, rule.Words, rule.Citation);
                break;
            // Of a known kind an open group, as products for babies, is told too: the finding says that the use may free it.
            case (SubstanceVerdict.WarningIf, not Applies.No) when IsFor(label, rule) && !Says(label, rule.Words):
            case (SubstanceVerdict.Warning, not Applies.No) when (covers == Applies.Yes || label.Kind is not null)
                && !Says(label, rule.Words):
                Tell("warning.missing/substance", name, rule.Words, rule.Citation);
                break;
        }
    }

    // What may be in some kinds of product alone, or not in some. Of a label that does not say what it is nothing is settled.
    private static (string Id, object[] Told)? OfKind(SubstanceRule rule, Applies covers, string name, ProductKind? kind)
    {
        if (rule.Verdict == SubstanceVerdict.Unlisted)
            return ("colour.not-permitted/unlisted", [name, rule.Citation]);
        if (rule.Verdict is not (SubstanceVerdict.Only or SubstanceVerdict.Not) || (kind is null && covers != Applies.Yes))
            return null;
        var only = rule.Verdict == SubstanceVerdict.Only;
        var (id, perhaps) = rule.List == "IV"
            ? ("colour.not-permitted/here", "colour.not-permitted/here-perhaps")
            : ("substance.prohibited/here", "substance.prohibited/here-perhaps");
        object[] told =
        [
            name, kind?.Name.ToLowerInvariant() ?? "as its words say",
            $"{(only ? "permitted only" : "not permitted")} in: {Groups(rule)}{Words(rule)}",
            rule.Citation,
        ];
        return covers == Applies.Perhaps ? (perhaps, [.. told, Settles(kind!, rule)])
            : covers == (only ? Applies.No : Applies.Yes) ? (id, told)
            : null;
    }

    /// <summary>A share in percent, for a sentence.</summary>
    internal static string Percent(decimal percent) => percent.ToString("0.######", CultureInfo.InvariantCulture) + " %";

    /// <summary>A share in percent that was worked out, rounded for a sentence.</summary>
    /// <remarks>What the last places of the arithmetic leave is cut off first, so that a share on
    /// the edge is told alike whichever way it was reached.</remarks>
    internal static string Rounded(decimal percent, int places) => Percent(Math.Round(Math.Round(percent, 12), places));

    // What only some people must be warned of, as of children under three, is asked for unless the product is known not to be for them.
    private static bool IsFor(CheckCase label, SubstanceRule rule) =>
        rule.Groups.All(g => !ProductFact.All.TryGetValue(g, out var fact) || label.IsSo(fact) != false);

    private static bool Says(CheckCase label, string words) => new SetWords(label.Label.Cautions).HaveInAnyLanguage(words);

    /// <summary>The facts that settle whether a product is one of a row's, as a fix names them; empty where none does.</summary>
    internal static string Settles(ProductKind kind, SubstanceRule rule) =>
        ProductGroup.Open(kind, rule.Groups).ToArray() is { Length: > 0 } open
            ? $" by the {(open.Length == 1 ? "fact" : "facts")} {string.Join(", ", open)} (yes or no)"
            : "";

    private static string Groups(SubstanceRule rule) => string.Join(", ", rule.Groups.Select(ProductGroup.Phrase));

    private static string Words(SubstanceRule rule) => rule.Words.Length == 0 ? "" : $" ({rule.Words})";
}

/// <summary>A substance of the product, a row of the table that touches it, and whether the row speaks of this kind of product.</summary>
internal sealed record Hit(SubstanceShare Share, SubstanceRule Rule, Applies Covers);
