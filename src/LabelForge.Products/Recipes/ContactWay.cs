using System.Net.Mail;

namespace LabelForge.Recipes;

/// <summary>What a way to reach a business is.</summary>
public enum ContactKind
{
    /// <summary>A telephone number.</summary>
    Phone,

    /// <summary>A web address.</summary>
    Web,

    /// <summary>An e-mail address.</summary>
    Email,
}

/// <summary>A way to reach a business, told by how it is written.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">As it will stand on labels.</param>
public sealed partial record ContactWay(ContactKind Kind, string Text)
{
    /// <summary>Reads a telephone number, a web address or an e-mail address.</summary>
    public static Parsed<ContactWay> Parse(string typed)
    {
        var text = typed.Trim();
        if (text.Contains('@', StringComparison.Ordinal))
            return Email(text) is { } wrong ? Parsed<ContactWay>.Refused(wrong) : Parsed<ContactWay>.Of(new(ContactKind.Email, text));
        if (PhoneShape().IsMatch(text) && text.Count(char.IsAsciiDigit) is >= 5 and <= 15)
            return Parsed<ContactWay>.Of(new(ContactKind.Phone, text));
        var web = Scheme().Replace(text, "").TrimEnd('/');
        return WebShape().IsMatch(web)
            ? Parsed<ContactWay>.Of(new(ContactKind.Web, web))
            : Parsed<ContactWay>.Refused("business.no-contact", ("text", text));
    }

    /// <summary>What is wrong with an e-mail address; null where nothing is.</summary>
    public static Problem? Email(string typed)
    {
        var text = typed.Trim();
        var at = text.LastIndexOf('@');
        if (at <= 0)
            return new Problem("business.email-no-name", ("text", text));
        var host = text[(at + 1)..];
        if (!host.Contains('.', StringComparison.Ordinal) || host.EndsWith('.'))
            return new Problem("business.email-ends-early", ("name", text[..at]),
                ("host", host.Trim('.') is { Length: > 0 } some ? some : "thistle"));
        return MailAddress.TryCreate(text, out var read) && read.Address == text && WebShape().IsMatch(host)
            ? null
            : new Problem("business.no-email", ("text", text));
    }

    [GeneratedRegex(@"^\+?[0-9(][0-9 ()./-]*[0-9]\z")]
    private static partial Regex PhoneShape();

    [GeneratedRegex(@"^https?://", RegexOptions.IgnoreCase)]
    private static partial Regex Scheme();

    [GeneratedRegex(@"^[\p{L}\p{N}](?:[\p{L}\p{N}-]*[\p{L}\p{N}])?(?:\.[\p{L}\p{N}](?:[\p{L}\p{N}-]*[\p{L}\p{N}])?)*\.[\p{L}]{2,24}(?:/[^\s]*)?\z")]
    private static partial Regex WebShape();
}
