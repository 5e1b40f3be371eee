using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>How a person wants the page: its language, and light or dark. Kept beside the drafts;
/// nothing of it is the workshop's.</summary>
public sealed class Preferences(OpenDocuments documents) : IDisposable
{
    private const string LanguageKey = "language";
    private const string SchemeKey = "scheme";
    private const string ScreenKey = "screen";
    private const string WhoKey = "who";

    private readonly PageStateFile<string> _kept = new(documents, "page.json");

    /// <summary>Told after a change.</summary>
    public event Action? Changed;

    /// <summary>The page's language.</summary>
    public string Language => _kept.TryGet(LanguageKey, out var language) && language is not null ? language : "en";

    /// <summary><c>light</c>, <c>dark</c>, or <c>system</c>: as the machine has it.</summary>
    public string Scheme => _kept.TryGet(SchemeKey, out var scheme) && scheme is "light" or "dark" ? scheme : "system";

    /// <summary>How much larger than a page's own inch an inch of this screen is drawn, found
    /// with a card held against it; 1 where nobody has.</summary>
    public decimal ScreenScale =>
        _kept.TryGet(ScreenKey, out var scale)
            && PlainFigure.Read(scale) is >= 0.5m and <= 2 and var value ? value : 1;

    /// <summary>Who writes into the books: the name that was written here, else the user of this machine.</summary>
    public string Who => WrittenWho is { Length: > 0 } who ? who : Environment.UserName;

    /// <summary>The name that was written; empty where none was.</summary>
    public string WrittenWho => _kept.TryGet(WhoKey, out var who) ? who?.Trim() ?? "" : "";

    /// <summary>Writes down who writes into the books from here on; nothing for the user of this machine.</summary>
    public void ChooseWho(string who) => Keep(WhoKey, who.Trim() is { Length: <= 100 } name ? name : who.Trim()[..100]);

    /// <summary>Chooses the language.</summary>
    public void ChooseLanguage(string language) => Keep(LanguageKey, language);

    /// <summary>Chooses light, dark or system.</summary>
    public void ChooseScheme(string scheme) => Keep(SchemeKey, scheme);

    /// <summary>Keeps what a card held against the screen showed.</summary>
    public void ChooseScreenScale(decimal scale) => Keep(ScreenKey, scale.ToString(CultureInfo.InvariantCulture));

    /// <summary>What was put away for good, such as a tour; by its name.</summary>
    public bool IsAway(string what) => _kept.TryGet("away " + what, out _);

    /// <summary>Puts something away for good.</summary>
    public void PutAway(string what) => Keep("away " + what, "yes");

    /// <inheritdoc/>
    public void Dispose() => _kept.Dispose();

    private void Keep(string key, string value)
    {
        _kept.Keep(key, value);
        Changed?.Invoke();
    }
}
