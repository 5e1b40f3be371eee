using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using LabelForge.Files;
using LabelForge.Print.Documents;

namespace LabelForge.ProductPapers;

/// <summary>A paper as data: the very values that are printed, whole.</summary>
public static class PaperData
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The paper as JSON: each part under its key with its facts, its rows and what is missing.</summary>
    public static JsonObject Of(Paper paper)
    {
        var parts = new JsonObject();
        foreach (var section in paper.Sections)
            parts[section.Key] = Part(section);
        return new JsonObject
        {
            ["paper"] = paper.Kind,
            ["title"] = paper.Title,
            ["of"] = paper.Subtitle,
            ["source"] = paper.Source,
            ["notes"] = new JsonArray([.. paper.Notes.Select(n => (JsonNode?)n)]),
            ["parts"] = parts,
            ["questions"] = new JsonArray([.. paper.Sections
                .SelectMany(s => s.Facts.Where(f => f.IsQuestion)
                    .Select(f => (JsonNode?)new JsonObject { ["part"] = s.Key, ["key"] = f.Key, ["question"] = f.What }))]),
            ["missing"] =
                new JsonArray(
                    [.. paper.Missing
                        .Select(m => (JsonNode?)new JsonObject
                        {
                            ["part"] = m.Section.Key, ["what"] = m.Fact.What, ["write"] = m.Fact.Missing, ["source"] = m.Section.Source,
                        })]),
        };
    }

    /// <summary>The same as text.</summary>
    public static string Text(Paper paper) => Of(paper).ToJsonString(Options);

    private static JsonObject Part(PaperSection section)
    {
        var part = new JsonObject { ["title"] = section.Title };
        if (section.Source is { } source)
            part["source"] = source;
        foreach (var fact in section.Facts)
            part[fact.Key] = fact.Value is { } value ? Value(value) : null;
        if (section.Table is { } table)
            part["rows"] = new JsonArray([.. table.Rows.Select(row => (JsonNode?)Row(table, row))]);
        return part;
    }

    private static JsonObject Row(PaperTable table, IReadOnlyList<PaperValue> cells)
    {
        var row = new JsonObject();
        for (var i = 0; i < cells.Count; i++)
            row[table.Columns[i].Key] = Value(cells[i]);
        return row;
    }

    private static JsonNode? Value(PaperValue value) =>
        value.Data is null ? value.Text.Length == 0 ? null : JsonValue.Create(value.Text) : PlainJson.Of(value.Data);
}
