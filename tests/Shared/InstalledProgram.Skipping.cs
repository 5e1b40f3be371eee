namespace LabelForge.Tests.Shared;

/// <content>What a test does where a program is not there; programs that are no tests look for one and leave this out.</content>
internal static partial class InstalledProgram
{
    private static readonly Dictionary<string, string> Packages = new(StringComparer.Ordinal)
    {
        ["zbarimg"] = "zbar-tools",
        ["dmtxread"] = "dmtx-utils",
        ["pdftoppm"] = "poppler-utils",
        ["pdftotext"] = "poppler-utils",
        ["pdffonts"] = "poppler-utils",
        ["pdfinfo"] = "poppler-utils",
        ["unshare"] = "util-linux",
        ["setpriv"] = "util-linux",
    };

    /// <summary>Skips the test, with the package to install, where one of the programs is not on this machine.</summary>
    public static void OrSkip(params string[] names)
    {
        foreach (var name in names)
            Assert.SkipUnless(Find(name) is not null,
                $"{name} is not on this machine (Debian: apt install {Packages.GetValueOrDefault(name, name)}; or run build/test).");
    }
}
