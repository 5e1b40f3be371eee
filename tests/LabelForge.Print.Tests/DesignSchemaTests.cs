using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using LabelForge.Print.Designs;
using YamlDotNet.Serialization;

namespace LabelForge.Print.Tests;

/// <summary>The JSON Schema of designs says what the reader of designs says; validated by JsonSchema.Net, which is not ours.</summary>
public sealed class DesignSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(Templates(), "design.schema.json")));

    public static TheoryData<string> Shipped => [.. LabelDesign.Known];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_design_that_ships_keeps_to_the_schema(string id) =>
        Assert.True(Schema.Evaluate(Json(File.ReadAllText(Path.Combine(Templates(), "designs", id + ".yaml")))).IsValid);

    [Theory]
    [InlineData("{ name: A, width: 4 in, height: 2 in, panels: { front: { width: 4 in, height: 2 in, colour: red } } }")]
    [InlineData("{ name: A, width: 4 in, height: 2 in, panels: { front: { width: 4 in, height: 2 in, elements: [ { role: "
        + "slogan } ] } } }")]
    [InlineData("{ name: A, width: 4 in, height: 2 in }")]
    [InlineData("{ name: A, width: 4, height: 2 in, panels: { front: { width: 4 in, height: 2 in } } }")]
    public void What_the_reader_refuses_the_schema_refuses(string yaml)
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, yaml);
            Assert.Throws<Measures.InputException>(() => LabelDesign.LoadFile(path, "designs/a.yaml"));
            Assert.False(Schema.Evaluate(Json(yaml)).IsValid);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void The_schema_knows_the_same_keys_and_roles_as_the_reader()
    {
        using var text = JsonDocument.Parse(File.ReadAllText(Path.Combine(Templates(), "design.schema.json")));
        var root = text.RootElement;
        var parts = root.GetProperty("$defs");
        Assert.Equal(DesignFile.DesignKeys.Order(), Keys(root));
        Assert.Equal(DesignFile.PanelKeys.Order(), Keys(parts.GetProperty("panel")));
        Assert.Equal(DesignFile.ElementKeys.Order(), Keys(parts.GetProperty("element")));
        Assert.Equal(Roles.Names,
            parts.GetProperty("element").GetProperty("properties").GetProperty("role").GetProperty("enum").EnumerateArray()
                .Select(v => v.GetString()!));
        Assert.Equal(DesignStyle.Known.Order(),
            root.GetProperty("properties").GetProperty("style").GetProperty("enum").EnumerateArray().Select(v => v.GetString()!).Order());
    }

    private static IEnumerable<string> Keys(JsonElement part) =>
        part.GetProperty("properties").EnumerateObject().Select(p => p.Name).Order();

    private static JsonElement Json(string yaml)
    {
        var read = new DeserializerBuilder().WithAttemptingUnquotedStringTypeDeserialization().Build().Deserialize(yaml);
        return JsonSerializer.Deserialize<JsonElement>(new SerializerBuilder().JsonCompatible().Build().Serialize(read));
    }

    private static string Templates([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "templates"));
}
