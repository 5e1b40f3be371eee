using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>How a person wants the page: its language, and light or dark. Kept beside the drafts; nothing of it is the workshop's.</summary>
public sealed class Preferences(Desk desk) : IDisposable
{
    private const string LanguageKey = "language";
    private const string SchemeKey = "scheme";

    private readonly PageStateFile<string> _kept = new(desk, "page.json");

    /// <summary>Told after a change.</summary>
    public event Action? Changed;

    /// <summary>The page's language.</summary>
    public string Language => _kept.TryGet(LanguageKey, out var language) && language is not null ? language : "en";

    /// <summary><c>light</c>, <c>dark</c>, or <c>system</c>: as the machine has it.</summary>
    public string Scheme => _kept.TryGet(SchemeKey, out var scheme) && scheme is "light" or "dark" ? scheme : "system";

    /// <summary>Chooses the language.</summary>
    public void ChooseLanguage(string language) => Keep(LanguageKey, language);

    /// <summary>Chooses light, dark or system.</summary>
    public void ChooseScheme(string scheme) => Keep(SchemeKey, scheme);

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
