using System.Collections.Immutable;
using LabelForge.Measures;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace LabelForge.Recipes.Files;

/// <summary>Reads a workshop file into nodes that know their lines.</summary>
/// <remarks>
/// Anchors, aliases and tags are refused: a workshop file never needs them, and without them no small file
/// can grow into a large one in memory.
/// </remarks>
public static class YamlFile
{
    private const long LargestFile = 1_000_000;
    private const int DeepestNesting = 20;
    private const string HowToWrite = "Check the indentation and put text that holds \": \" or \"#\" in quotation marks.";

    /// <summary>Reads a file.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="shownAs">How messages name it.</param>
    /// <exception cref="InputException">It cannot be read, or is no set of keys and values.</exception>
    public static MapNode Read(string path, string shownAs)
    {
        try
        {
            if (new FileInfo(path).Length > LargestFile)
                throw new InputException(new Problem(shownAs, 0, "The file is larger than a megabyte.", "A workshop file is a page of text; split or shorten it."));
            return ReadText(File.ReadAllText(path), shownAs);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(shownAs, 0, "The file cannot be read.", $"Check that it is there and that you may open it ({e.Message})"));
        }
    }

    /// <summary>Reads a file's text.</summary>
    public static MapNode ReadText(string text, string shownAs) =>
        Root(text, shownAs) is var node && node is MapNode map ? map : throw node.Refuse($"The file is {node.Kind}.", "Write keys and values, for example: name: ...");

    /// <summary>What a text is: keys and values, a list, or one value.</summary>
    public static Node Root(string text, string shownAs) => SimpleYaml.Read(text, shownAs) ?? ReadGenerally(text, shownAs);

    /// <summary>The same by the general reader, which takes all of YAML.</summary>
    internal static Node ReadGenerally(string text, string shownAs)
    {
        var parser = new Parser(new StringReader(text));
        try
        {
            parser.Consume<StreamStart>();
            if (!parser.TryConsume<DocumentStart>(out _))
                throw new InputException(new Problem(shownAs, 1, "The file is empty.", "Write keys and values, for example: name: ..."));
            var node = Read(parser, shownAs, 0);
            parser.Consume<DocumentEnd>();
            if (parser.Accept<DocumentStart>(out var second))
                throw new InputException(new Problem(shownAs, (int)second.Start.Line, "The file holds a second document.", "Remove the line of three dashes and what follows."));
            return node;
        }
        catch (YamlException e)
        {
            throw new InputException(new Problem(shownAs, (int)e.Start.Line, $"This is not readable as YAML: {e.Message.TrimEnd('.')}.",
                HowToWrite));
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException or OverflowException)
        {
            // The parser gives up on some files without saying where; the last thing that it could read is near.
            throw new InputException(new Problem(shownAs, (int)(parser.Current?.End.Line ?? 0), "From about here on this is not readable as YAML.", HowToWrite));
        }
    }

    private static Node Read(Parser parser, string file, int depth)
    {
        var at = parser.Current ?? throw new InputException(new Problem(file, 0, "The file ends too early.", "Finish the last line."));
        var line = (int)at.Start.Line;
        if (depth > DeepestNesting)
            throw new InputException(new Problem(file, line, "Lists stand inside lists too deeply.", "Write them flatter."));
        if (at is NodeEvent { Anchor.IsEmpty: false } or AnchorAlias)
            throw new InputException(new Problem(file, line, "The signs & and * before a value mean a reference, which is not read here.",
                "Write the value out, or put it in quotation marks."));
        if (at is NodeEvent { Tag.IsEmpty: false } tagged && tagged.Tag != "!")
            throw new InputException(new Problem(file, line, $"The tag {tagged.Tag} is not read here.", "Leave it out, or put the value in quotation marks."));
        switch (at)
        {
            case Scalar scalar:
                parser.MoveNext();
                return new TextNode(file, line, scalar.Value.Trim());
            case SequenceStart:
                parser.MoveNext();
                var items = ImmutableArray.CreateBuilder<Node>();
                while (!parser.TryConsume<SequenceEnd>(out _))
                    items.Add(Read(parser, file, depth + 1));
                return new ListNode(file, line, items.ToImmutable());
            case MappingStart:
                parser.MoveNext();
                return ReadMap(parser, file, line, depth);
            default:
                throw new InputException(new Problem(file, line, "A value is missing.", "Write a value after the colon."));
        }
    }

    private static MapNode ReadMap(Parser parser, string file, int line, int depth)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var keys = new HashSet<string>(StringComparer.Ordinal);
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var key = Read(parser, file, depth + 1) as TextNode
                ?? throw new InputException(new Problem(file, line, "A key is not plain text.", "Write key: value."));
            if (!keys.Add(key.Text))
                throw key.Refuse($"\"{key.Text}\" stands twice.", "Keep one of the two.");
            entries.Add(new Entry(key.Text, key.Line, Read(parser, file, depth + 1)));
        }
        return new MapNode(file, line, entries.ToImmutable());
    }
}
