namespace LabelForge.Tests.Shared;

/// <summary>Programs that tests use and that are not ours: decoders, Poppler, a browser, a server.</summary>
internal static class InstalledProgram
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

    /// <summary>Where a program lies, or nothing. A name that is there but is no program (an empty file, say) does not count.</summary>
    public static string? Find(string name) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => OperatingSystem.IsWindows() ? new[] { Path.Combine(folder, name + ".exe") } : [Path.Combine(folder, name)])
        .FirstOrDefault(IsProgram);

    /// <summary>Whether a program lies there: a file that may be run, or a link to one.</summary>
    public static bool IsProgram(string path)
    {
        // A link whose target is gone still counts as a file here.
        if (!File.Exists(path) || (File.ResolveLinkTarget(path, returnFinalTarget: true) is { } target && !target.Exists))
            return false;
        if (OperatingSystem.IsWindows())
            return true;
        return (File.GetUnixFileMode(path) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute)) != 0;
    }
}
