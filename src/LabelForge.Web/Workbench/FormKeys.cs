using System.Security.Cryptography;

namespace LabelForge.Web.Workbench;

/// <summary>The one-time keys of forms that write into the books: the books write a form once for its key.</summary>
/// <remarks>
/// A key is kept with what was typed. Where the program ended after it wrote and before it said so, the same form comes back
/// after a reload with the same key, and the books know it.
/// </remarks>
public sealed class FormKeys(Kept kept)
{
    private const string Page = "form-keys";
    private readonly Lock _gate = new();

    /// <summary>The key of a form as it stands.</summary>
    /// <param name="form">The form's name, with whatever tells it from others of its kind: <c>weigh 26R25-01E</c>.</param>
    public string Of(string form)
    {
        lock (_gate)
            return kept.Of<Known>(Page).Keys.GetValueOrDefault(form) ?? Fresh(form);
    }

    /// <summary>Gives a form a new key: what it holds from now on is another entry.</summary>
    public void Renew(string form)
    {
        lock (_gate)
            Fresh(form);
    }

    private string Fresh(string form)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        var known = kept.Of<Known>(Page);
        // Forms of batches long finished would be kept for ever.
        var keys = known.Keys.Count < 200 ? known.Keys : [];
        kept.Keep(Page, new Known { Keys = new(keys) { [form] = key } });
        return key;
    }

    /// <summary>The keys by form.</summary>
    public sealed record Known
    {
        /// <summary>The keys by form.</summary>
        public Dictionary<string, string> Keys { get; init; } = [];
    }
}
