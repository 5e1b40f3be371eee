using System.Text.Json;

namespace LabelForge.Cli.Tests;

public sealed class ColourVerbTests : IDisposable
{
    private readonly ExampleWorkshop _example = new();

    private string Folder => _example.Opened.Folder;

    public void Dispose() => _example.Dispose();

    [Fact]
    public void Colours_that_may_not_go_on_lips_are_not_proposed_for_a_balm_and_are_for_a_bar()
    {
        JsonElement Of(string recipe) =>
        CommandRun.Json("colour", recipe, "--workshop", Folder, "--want", "#8f7fb8", "--on", "2026-11-25");
        string[] Materials(JsonElement answer, string key) =>
        [.. answer.GetProperty(key).EnumerateArray().Select(a => a.GetProperty("material").GetString()!)];
        var (balm, bar) = (Of("lip-balm"), Of("bramble-bar"));
        Assert.Contains("ultramarine-violet", Materials(balm, "notAllowed"));
        Assert.DoesNotContain("ultramarine-violet", Materials(balm, "amounts"));
        Assert.Empty(Materials(bar, "notAllowed"));
        Assert.Contains("ultramarine-violet", Materials(bar, "amounts"));
        Assert.All(bar.GetProperty("amounts").EnumerateArray(),
            a => Assert.EndsWith("tsp", a.GetProperty("spoons").GetString(), StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_told_gives_the_colour_that_is_told_when_it_is_written_into_the_recipe()
    {
        var answer = CommandRun.Json("colour", "bramble-bar", "--workshop", Folder, "--want", "#c9a0b4");
        var recipe = Path.Combine(Folder, "recipes", "bramble-bar.yaml");
        var lines = File.ReadAllLines(recipe).Where(l => !l.Contains("ultramarine-violet", StringComparison.Ordinal)).ToList();
        lines.InsertRange(lines.FindIndex(l => l.Contains("use: bramble-fragrance", StringComparison.Ordinal)),
            answer.GetProperty("amounts").EnumerateArray()
            .Select(
                a =>
                    $"  - {{ use: {a.GetProperty("material").GetString()}, amount: {a.GetProperty("grams").GetDecimal().ToString(System.Globalization.CultureInfo.InvariantCulture)} g }}"));
        File.WriteAllLines(recipe, lines);
        var now = CommandRun.Json("colour", "bramble-bar", "--workshop", Folder).GetProperty("colour").GetString()!;
        Assert.True(Print.Palettes.Oklch
            .Distance(Print.Colour.Parse(answer.GetProperty("gives").GetString()!)!.Value, Print.Colour.Parse(now)!.Value) < 0.01, now);
    }

    [Fact]
    public void A_colour_from_a_photo_is_written_as_a_materials_swatch()
    {
        var photo = Photo(new SkiaSharp.SKColor(0x12, 0x34, 0x56));
        var run = CommandRun.Of("colour", "--photo", photo, "--for", "slate-blue-mica", "--workshop", Folder);
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        Assert.Contains("swatch: \"#123456\"", File.ReadAllText(Path.Combine(Folder, "materials", "slate-blue-mica.yaml")),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"blue\" is not a colour", "bramble-bar", "--want", "blue")]
    [InlineData("neither a recipe nor a photo")]
    [InlineData("no material \"madder\"", "--photo", "PHOTO", "--for", "madder")]
    [InlineData("\"40\" is no place in a photo", "--photo", "PHOTO", "--at", "40")]
    [InlineData("nowhere.png", "--photo", "nowhere.png")]
    public void What_cannot_be_done_is_said(string told, params string[] call)
    {
        var run = CommandRun.Of(["colour", .. call.Select(c => c == "PHOTO" ? Photo(SkiaSharp.SKColors.Teal) : c), "--workshop", Folder]);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains(told, run.Messages, StringComparison.Ordinal);
    }

    private string Photo(SkiaSharp.SKColor colour)
    {
        var path = Path.Combine(Folder, "soap.png");
        using var bitmap = new SkiaSharp.SKBitmap(20, 20);
        bitmap.Erase(colour);
        using var file = bitmap.Encode(SkiaSharp.SKEncodedImageFormat.Png, 100);
        File.WriteAllBytes(path, file.ToArray());
        return path;
    }
}
