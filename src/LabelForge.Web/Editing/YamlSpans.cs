using System.Collections.Immutable;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace LabelForge.Web.Editing;

/// <summary>Finds where everything stands in a YAML text.</summary>
internal static class YamlSpans
{
    /// <summary>The text's one document; null where it is empty or no YAML.</summary>
    public static YamlSpan? Of(string text)
    {
        try
        {
            var parser = new Parser(new StringReader(text));
            parser.Consume<StreamStart>();
            return parser.TryConsume<DocumentStart>(out _) ? Read(parser) : null;
        }
        catch (YamlException)
        {
            return null;
        }
    }

    private static YamlSpan Read(Parser parser)
    {
        switch (parser.Current)
        {
            case Scalar scalar:
                parser.MoveNext();
                return Of(scalar);
            case SequenceStart list:
                parser.MoveNext();
                var items = ImmutableArray.CreateBuilder<YamlSpan>();
                SequenceEnd listEnd;
                while (!parser.TryConsume(out listEnd!))
                    items.Add(Read(parser));
                var flow = list.Style == SequenceStyle.Flow;
                return new ListSpan(At(list.Start), flow ? At(listEnd.Start) + 1 : items.Count == 0 ? At(listEnd.Start) : items[^1].End, Line(list), flow, items.ToImmutable());
            case MappingStart map:
                parser.MoveNext();
                var entries = ImmutableArray.CreateBuilder<EntrySpan>();
                MappingEnd mapEnd;
                while (!parser.TryConsume(out mapEnd!))
                    entries.Add(new EntrySpan(Of(parser.Consume<Scalar>()), Read(parser)));
                var braces = map.Style == MappingStyle.Flow;
                return new MapSpan(At(map.Start), braces ? At(mapEnd.Start) + 1 : entries.Count == 0 ? At(mapEnd.Start) : Math.Max(entries[^1].Key.End, entries[^1].Value.End), Line(map), braces, entries.ToImmutable());
            default:
                throw new YamlException(parser.Current?.Start ?? Mark.Empty, parser.Current?.End ?? Mark.Empty, "Not a value that the page can edit.");
        }
    }

    private static ScalarSpan Of(Scalar scalar) => new(At(scalar.Start), At(scalar.End), Line(scalar), scalar.Value, scalar.Style);

    private static int At(Mark mark) => (int)mark.Index;

    private static int Line(ParsingEvent at) => (int)at.Start.Line;
}
