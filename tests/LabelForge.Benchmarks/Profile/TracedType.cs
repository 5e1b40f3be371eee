using System.Collections.Immutable;

namespace LabelForge.Benchmarks;

/// <summary>A type as the runtime's events write it: <c>System.Linq.Lookup`2[System.__Canon,System.Int32]</c>.</summary>
internal sealed record TracedType(string Name, ImmutableArray<TracedType> Arguments, int Ranks)
{
    /// <summary>Its own name and those in it.</summary>
    public IEnumerable<string> Names => Arguments.SelectMany(a => a.Names).Prepend(Name);

    /// <summary>Reads a type.</summary>
    public static TracedType Parse(string text)
    {
        var at = 0;
        return Parse(text, ref at);
    }

    private static TracedType Parse(string text, ref int at)
    {
        var end = text.AsSpan(at).IndexOfAny("[],") is >= 0 and var i ? at + i : text.Length;
        var name = text[at..end];
        at = end;
        var arguments = ImmutableArray.CreateBuilder<TracedType>();
        var ranks = 0;
        while (at < text.Length && text[at] == '[')
        {
            at++;
            if (text[at] == ']')
                ranks++;
            else
            {
                arguments.Add(Parse(text, ref at));
                for (; text[at] == ',';)
                {
                    at++;
                    arguments.Add(Parse(text, ref at));
                }
            }
            at++;
        }
        return new(name, arguments.ToImmutable(), ranks);
    }
}
