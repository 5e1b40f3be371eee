using LabelForge.Web.Wording;

namespace LabelForge.Web.Workbench;

/// <summary>What pages say: the words of the language that was chosen.</summary>
public sealed class Say
{
    private readonly Preferences _preferences;
    private WordBook _book;

    /// <summary>The words by what was chosen for this workshop.</summary>
    public Say(Preferences preferences)
    {
        _preferences = preferences;
        _book = WordBook.Of(preferences.Language);
        preferences.Changed += () => _book = _book.Language == _preferences.Language ? _book : WordBook.Of(_preferences.Language);
    }

    /// <summary>The language's code.</summary>
    public string Language => _book.Language;

    /// <summary>The words of a key.</summary>
    public string this[string key] => _book.Of(key);

    /// <summary>The words of a key, with its places filled.</summary>
    public string this[string key, params object?[] filled] => _book.Of(key, filled);

    /// <summary>Whether a key has words.</summary>
    public bool Has(string key) => _book.Has(key);

    /// <summary>The words for one or for several: the keys <c>key.one</c> and <c>key.many</c>, which begin with the count.</summary>
    public string Counted(string key, int count, params object?[] more) =>
        _book.Of(count == 1 ? key + ".one" : key + ".many", [count, .. more]);
}
