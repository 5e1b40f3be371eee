using System.CommandLine;
using LabelForge.Measures;

namespace LabelForge.Cli.Verbs;

/// <summary><c>init</c>: makes a workshop's folder with a few files to change.</summary>
internal static class InitVerb
{
    public static Command Build()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The folder to make the workshop in", DefaultValueFactory = _ => "." };
        var force = new Option<bool>("--force") { Description = "Write over files of the same names" };
        var verb = new Command("init", "Makes a workshop: a folder of plain files for your business, your materials and your recipes") { folder, force };
        verb.SetAction(r => Exit.Run(() => Run(r.GetValue(folder)!, r.GetValue(force))));
        return verb;
    }

    private static int Run(string folder, bool force)
    {
        if (File.Exists(Path.Combine(folder, "workshop.yaml")))
            throw new InputException(Path.Combine(folder, "workshop.yaml"), 0, "call.workshop-there");
        foreach (var file in ShippedWorkshop.Write(ShippedWorkshop.Starter, folder, force))
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
