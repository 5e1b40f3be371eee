namespace LabelForge.Web.Workbench;

/// <summary>A value that is worked out anew only when what it is of has changed: a page is drawn
/// at every key, its workshop and books change seldom.</summary>
/// <typeparam name="TOf">What it is of, compared as itself.</typeparam>
/// <typeparam name="T">The value.</typeparam>
/// <param name="work">Works it out.</param>
public sealed class WhileSame<TOf, T>(Func<TOf, T> work)
{
    private (TOf Of, T Value)? _known;

    /// <summary>The value of this.</summary>
    public T Of(TOf of)
    {
        if (_known is { } known && EqualityComparer<TOf>.Default.Equals(known.Of, of))
            return known.Value;
        var value = work(of);
        _known = (of, value);
        return value;
    }
}
