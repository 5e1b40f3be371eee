namespace LabelForge.Cli.Verbs;

/// <summary><c>init</c>: makes a workshop's folder with a few files to change.</summary>
internal static class InitVerb
{
    public static Command Build()
    {
        var verb = new Verb("init", "Makes a workshop: a folder of plain files for your business, your materials and your recipes");
        var folder = verb.Argument<string>("FOLDER", "The folder to make the workshop in", ".");
        var force = verb.Option<bool>("--force", "Write over files of the same names");
        var format = verb.Format();
        return verb.Runs(r => Run(r.GetValue(folder)!, r.GetValue(force), Shared.IsJson(r, format)));
    }

    private static int Run(string folder, bool force, bool json)
    {
        if (File.Exists(Path.Combine(folder, "workshop.yaml")))
            throw new InputException(Path.Combine(folder, "workshop.yaml"), 0, "call.workshop-there");
        var files = ShippedWorkshop.Write(ShippedWorkshop.Starter, folder, force);
        if (json)
        {
            JsonOut.Write(new JsonObject { ["folder"] = folder, ["files"] = files.ToJson() });
            return Exit.Done;
        }
        foreach (var file in files)
            Console.WriteLine($"  {file}");
        Console.WriteLine($"""

            A workshop to change into your own. Next:
              1. workshop.yaml: your name, place and contact.
              2. materials/: copy each supplier's list, in the supplier's order.
              3. labelforge declare {Path.Combine(folder, "recipes", "first-bar.yaml")}
              4. labelforge check {Path.Combine(folder, "recipes", "first-bar.yaml")}
            """);
        return Exit.Done;
    }
}
