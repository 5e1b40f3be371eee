using System.Collections.Immutable;
using LabelForge.Files;
using LabelForge.Measures;

namespace LabelForge.Tests.Files;

/// <summary>Where a file may be written.</summary>
public sealed class OutputPathTests : IDisposable
{
    private static readonly ImmutableArray<FileKind> Drawn = [FileKind.Pdf, FileKind.Svg, FileKind.Png];
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public OutputPathTests()
    {
        Write("workshop.yaml", "business: Otterbank Soaps");
        Write("records.db", "SQLite format 3\0...");
    }

    [Theory]
    [InlineData("workshop.yaml")]
    [InlineData("records.db")]
    [InlineData("recipes/bar.yaml")]
    [InlineData("materials/base.yaml")]
    [InlineData("x.png")]
    [InlineData("x.svg")]
    [InlineData("bars")]
    [InlineData("bars.pdf.txt")]
    [InlineData("")]
    [InlineData("recipes/bars.pdf")]
    [InlineData("MATERIALS/bars.pdf")]
    [InlineData("art/deep/sprig.pdf")]
    [InlineData("designs/bars.pdf")]
    [InlineData("stock/bars.pdf")]
    [InlineData(".drafts/bars.pdf")]
    [InlineData("recipes/../recipes/bars.pdf")]
    public void A_PDF_goes_neither_under_another_kinds_name_nor_among_a_workshops_own_files(string name) => Refused(name, FileKind.Pdf);

    [Theory]
    [InlineData("workshop.yaml")]
    [InlineData("records.db")]
    [InlineData("records.db-wal")]
    [InlineData("recipes/bar.yaml")]
    [InlineData("recipes/copy.db")]
    [InlineData("label.pdf")]
    [InlineData("list.csv")]
    public void A_copy_of_the_books_is_no_other_kind_of_file_and_never_the_books_themselves(string name) => Refused(name, FileKind.Books);

    [Theory]
    [InlineData("workshop.yaml")]
    [InlineData("records.db")]
    [InlineData("Records.DB")]
    public void Force_does_not_reach_the_books_or_the_workshops_file(string name) =>
        Assert.Throws<InputException>(() => OutputPath.RefuseUnlessFree(Path.Combine(_folder, name),
            [FileKind.Books with { Endings = [".yaml", ".db"] }], force: true));

    [Theory]
    [InlineData("bars.pdf")]
    [InlineData("Bars.PDF")]
    [InlineData("labels/bars.pdf")]
    [InlineData("old.pdf")]
    [InlineData("empty.pdf")]
    public void A_new_name_an_empty_file_and_a_former_print_are_free(string name)
    {
        Write("old.pdf", "%PDF-1.4\n");
        Write("empty.pdf", "");
        OutputPath.RefuseUnlessFree(Path.Combine(_folder, name), Drawn, force: false);
    }

    [Theory]
    [InlineData("a.pdf", "My notes")]
    [InlineData("a.png", "%PDF-1.4")]
    [InlineData("a.svg", "<html><body/></html>")]
    [InlineData("a.csv", "One long letter without a table in it")]
    [InlineData("a.csv", "PK\u0003\u0004\0\0, a spreadsheet")]
    [InlineData("a.html", "<svg/>")]
    public void What_is_there_and_of_another_kind_is_lost_only_by_force(string name, string holds)
    {
        Write(name, holds);
        ImmutableArray<FileKind> kinds = [FileKind.Pdf, FileKind.Svg, FileKind.Png, FileKind.Csv, FileKind.Html];
        var refused = Assert.Throws<InputException>(() => OutputPath.RefuseUnlessFree(Path.Combine(_folder, name), kinds, force: false));
        Assert.Contains("would be lost", refused.Message);
        OutputPath.RefuseUnlessFree(Path.Combine(_folder, name), kinds, force: true);
    }

    [Fact]
    public void A_link_is_not_followed_neither_as_the_file_nor_as_its_folder()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights there.");
        Write("theirs.txt", "theirs");
        File.CreateSymbolicLink(Path.Combine(_folder, "bars.pdf"), Path.Combine(_folder, "theirs.txt"));
        File.CreateSymbolicLink(Path.Combine(_folder, "gone.pdf"), Path.Combine(_folder, "nowhere"));
        Refused("bars.pdf", FileKind.Pdf);
        Refused("gone.pdf", FileKind.Pdf);
        Directory.CreateDirectory(Path.Combine(_folder, "recipes", "old"));
        var door = Path.Combine(_folder, "door");
        Directory.CreateSymbolicLink(door, Path.Combine(_folder, "recipes"));
        Refused("door/bars.pdf", FileKind.Pdf);
        Refused("door/old/bars.pdf", FileKind.Pdf);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Refused(string name, FileKind kind) =>
        Assert.Throws<InputException>(() => OutputPath.RefuseUnlessFree(Path.Combine(_folder, name), [kind], force: false));

    private void Write(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }
}
