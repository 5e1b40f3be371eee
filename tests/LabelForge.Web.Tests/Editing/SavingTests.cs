using LabelForge.Web.Editing;
using LabelForge.Web.Serving;
using LabelForge.Web.Workbench;

namespace LabelForge.Web.Tests.Editing;

/// <summary>What was saved is said to be saved, and what was not is told on every page.</summary>
public sealed class SavingTests : IDisposable
{
    private const string Oil = "name: Castor oil\nkind: oil\ncontains: Ricinus Communis Seed Oil\n";
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-web-").FullName;
    private readonly OpenDocuments _documents;

    public SavingTests()
    {
        _documents = new OpenDocuments(new ServeOptions(_folder, 0));
        _documents.Create(OpenDocuments.Materials, "castor-oil", Oil);
    }

    public void Dispose()
    {
        _documents.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private string Path_(string path) => Path.Combine(_folder, path);

    private EditedFile Open() => _documents.Open(OpenDocuments.Materials, "castor-oil")!;

    [Fact]
    public async Task In_a_new_workshop_without_drafts_an_edit_is_saved_and_nothing_else_is_said()
    {
        var file = Open();
        file.Apply(t => YamlEdit.Set(t, ["name"], "Castor oil, cold pressed"));
        await file.SaveNowAsync();
        Assert.Null(file.SaveTrouble);
        Assert.True(file.IsSaved);
        Assert.Empty(_documents.NotSaved);
        Assert.Contains("cold pressed", await File.ReadAllTextAsync(Path_("materials/castor-oil.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_could_not_be_written_is_told_with_its_reason_until_it_is()
    {
        var file = Open();
        var told = 0;
        _documents.Changed += () => told++;
        Directory.Move(Path_("materials"), Path_("elsewhere"));
        await File.WriteAllTextAsync(Path_("materials"), "a file in the place of the folder");
        file.Apply(t => YamlEdit.Set(t, ["name"], "Castor oil, cold pressed"));
        await file.SaveNowAsync();
        var (what, why) = Assert.Single(_documents.NotSaved);
        Assert.Equal("materials/castor-oil.yaml", what);
        Assert.NotEmpty(why);
        Assert.False(file.IsSaved);
        Assert.True(told > 0);
        File.Delete(Path_("materials"));
        Directory.Move(Path_("elsewhere"), Path_("materials"));
        await _documents.SaveAllAsync();
        Assert.Empty(_documents.NotSaved);
        Assert.Contains("cold pressed", await File.ReadAllTextAsync(Path_("materials/castor-oil.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_that_cannot_be_kept_is_told_too()
    {
        await File.WriteAllTextAsync(Path_(".drafts"), "a file in the place of the folder");
        var kept = new Kept(_documents);
        kept.Keep("stock-in", new Typed { Text = "16 fl oz" });
        kept.Dispose();
        Assert.Equal(".drafts/typed.json", Assert.Single(_documents.NotSaved).What);
        File.Delete(Path_(".drafts"));
        kept = new Kept(_documents);
        kept.Keep("stock-in", new Typed { Text = "16 fl oz" });
        kept.Dispose();
        Assert.Empty(_documents.NotSaved);
    }

    [Fact]
    public async Task What_is_removed_is_brought_back_as_it_was_with_what_was_typed_and_could_not_be_used()
    {
        var file = Open();
        file.Apply(t => YamlEdit.Set(t, ["kind"], "oli"));
        await file.SaveNowAsync();
        var removed = await _documents.RemoveAsync(OpenDocuments.Materials, "castor-oil");
        Assert.False(_documents.Has(OpenDocuments.Materials, "castor-oil"));
        Assert.Equal(removed, Assert.Single(_documents.Removed));
        Assert.Contains("oli", removed.Text, StringComparison.Ordinal);
        _documents.Restore(removed);
        Assert.Empty(_documents.Removed);
        Assert.Contains("oli", Open().Text, StringComparison.Ordinal);
        Assert.Equal(Oil, Open().OnDisk);
    }

    [Fact]
    public async Task One_removed_twice_in_a_second_is_kept_twice()
    {
        await _documents.RemoveAsync(OpenDocuments.Materials, "castor-oil");
        _documents.Create(OpenDocuments.Materials, "castor-oil",
            Oil.Replace("Castor oil", "Another castor oil", StringComparison.Ordinal));
        await _documents.RemoveAsync(OpenDocuments.Materials, "castor-oil");
        Assert.Equal(2, _documents.Removed.Count);
    }

    [Fact]
    public async Task What_is_brought_back_never_writes_over_what_has_its_name_by_now()
    {
        var removed = await _documents.RemoveAsync(OpenDocuments.Materials, "castor-oil");
        _documents.Create(OpenDocuments.Materials, "castor-oil", Oil.Replace("Castor oil", "Another", StringComparison.Ordinal));
        Assert.Throws<LabelForge.Measures.InputException>(() => _documents.Restore(removed));
        Assert.Contains("Another", Open().Text, StringComparison.Ordinal);
        Assert.Single(_documents.Removed);
    }

    [Theory]
    [InlineData("materials:\n  - { use: castor-oil, amount: 1 g }\n", true)]
    [InlineData("materials:\n  - { use: castor-oil-raw, amount: 1 g }\n", false)]
    [InlineData("notes: castor-oil\nmaterials:\n  - { use: base, amount: 1 g }\n", false)]
    [InlineData("materials: [ { use: base, amount: 1 g } ]\nvariants:\n  - name: Oily\n    add: [ { use: castor-oil, amount: 1 g } ]\n",
        true)]
    [InlineData("materials: [ { use: base, amount: 1 g } ]\nvariants:\n  - name: Oily\n    replace: { base: castor-oil }\n", true)]
    [InlineData("materials: [ { use: base, amount: 1 g } ]\nvariants:\n  - name: Oily\n    replace: { base: { use: castor-oil, "
        + "amount: 2 g } }\n", true)]
    public void A_recipe_uses_what_stands_in_it_or_in_one_of_its_variants(string recipe, bool uses) =>
        Assert.Equal(uses, Users.InRecipe(recipe, "castor-oil"));

    public sealed class Typed
    {
        public string Text { get; init; } = "";
    }
}
