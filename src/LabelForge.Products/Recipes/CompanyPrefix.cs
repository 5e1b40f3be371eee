using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>
/// Reads <c>gtin prefix</c>: a GS1 Company Prefix, or a U.P.C. Company Prefix, which is the same number without the zero that
/// it begins with.
/// </summary>
/// <remarks>
/// GS1 General Specifications, 1.4.4 and 2.1.2: a U.P.C. Company Prefix is derived from a GS1 Company Prefix that begins with
/// 0 by leaving that 0 out (from memory). The prefixes that GS1 licenses have seven digits and more where they are new, so six
/// digits alone are most often such a U.P.C. prefix, and as a GS1 prefix they would be another company's.
/// </remarks>
internal static class CompanyPrefix
{
    private const string Gs1 = "GS1 ";
    private const string Upc = "U.P.C. ";

    /// <summary>The GS1 Company Prefix.</summary>
    /// <exception cref="Measures.InputException">It is none, or six digits that may be either of two.</exception>
    public static string Read(TextNode node)
    {
        var text = node.Text;
        if (text.StartsWith(Upc, StringComparison.OrdinalIgnoreCase) && IsDigits(text[Upc.Length..], 6, 10))
            return "0" + text[Upc.Length..];
        if (text.StartsWith(Gs1, StringComparison.OrdinalIgnoreCase) && IsDigits(text[Gs1.Length..], 6, 11))
            return text[Gs1.Length..];
        if (IsDigits(text, 6, 6))
        {
            throw node.Refuse("business.prefix-either", ("text", text));
        }
        return IsDigits(text, 7, 11) ? text : throw node.Refuse("business.prefix-unreadable", ("text", text));
    }

    private static bool IsDigits(string text, int least, int most) =>
        text.Length >= least && text.Length <= most && text.All(char.IsAsciiDigit);
}
