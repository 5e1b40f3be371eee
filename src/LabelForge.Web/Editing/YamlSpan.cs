using System.Collections.Immutable;
using YamlDotNet.Core;

namespace LabelForge.Web.Editing;

/// <summary>A piece of a YAML text and where it stands in it.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="End">The character after its last.</param>
/// <param name="Line">The line it begins on, from 1.</param>
internal abstract record YamlSpan(int Start, int End, int Line);

/// <summary>One value.</summary>
internal sealed record ScalarSpan(int Start, int End, int Line, string Value, ScalarStyle Style) : YamlSpan(Start, End, Line);

/// <summary>A list.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="End">The character after its last.</param>
/// <param name="Line">The line it begins on.</param>
/// <param name="IsFlow">Whether it stands in brackets.</param>
/// <param name="Items">What is in it.</param>
internal sealed record ListSpan(int Start, int End, int Line, bool IsFlow, ImmutableArray<YamlSpan> Items) : YamlSpan(Start, End, Line);

/// <summary>Keys with values.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="End">The character after its last.</param>
/// <param name="Line">The line it begins on.</param>
/// <param name="IsFlow">Whether it stands in braces.</param>
/// <param name="Entries">What is in it.</param>
internal sealed record MapSpan(int Start, int End, int Line, bool IsFlow, ImmutableArray<EntrySpan> Entries) : YamlSpan(Start, End, Line)
{
    /// <summary>The value of a key, or null.</summary>
    public EntrySpan? Entry(string key) => Entries.FirstOrDefault(e => e.Key.Value == key);
}

/// <summary>A key with its value.</summary>
internal sealed record EntrySpan(ScalarSpan Key, YamlSpan Value);
