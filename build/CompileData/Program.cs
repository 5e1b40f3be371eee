using LabelForge.Measures;
using LabelForge.Recipes.Files;

// The one argument is a list: on each line a source, a stroke, and where its compiled form goes.
foreach (var pair in File.ReadAllLines(args[0]).Where(l => l.Length > 0).Select(l => l.Split('|')))
{
    try
    {
        Directory.CreateDirectory(Path.GetDirectoryName(pair[1])!);
        using var to = File.Create(pair[1]);
        if (Path.GetExtension(pair[0]) == ".csv")
            CompiledData.WriteTable(TableText.Rows(File.ReadAllText(pair[0]), pair[0]), to);
        else
            CompiledData.WriteTree(YamlFile.Root(File.ReadAllText(pair[0]), pair[0]), to);
    }
    catch (Exception e) when (e is InputException or IOException)
    {
        // In the form in which the build shows a mistake at its place.
        Console.Error.WriteLine($"{pair[0]}({(e as InputException)?.Problem.Line ?? 0}): error LF0001: {e.Message}");
        return 1;
    }
}
return 0;
