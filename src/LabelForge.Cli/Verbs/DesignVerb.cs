using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Jobs;

namespace LabelForge.Cli.Verbs;

/// <summary><c>design</c>: the label designs known, their sizes and what they are for.</summary>
internal static class DesignVerb
{
    public static Command Build()
    {
        var verb = new Verb("design", "Lists the label designs known; your own go in the workshop's folder designs");
        var workshop = verb.Workshop();
        var format = verb.Format();
        return verb.Runs(r =>
        {
            var shelf = new DesignShelf(r.GetValue(workshop) ?? Directory.GetCurrentDirectory());
            var designs = shelf.Ids.Select(id => shelf.Load(id)).ToList();
            if (r.GetValue(format) == "json")
                JsonOut.Write(designs.ToJson(d => new JsonObject
                {
                    ["id"] = d.Id,
                    ["name"] = d.Name,
                    ["widthMm"] = d.Width.Millimetres,
                    ["heightMm"] = d.Height.Millimetres,
                    ["round"] = d.Round,
                    ["for"] = d.For,
                    ["with"] = d.With.ToJson(),
                    ["own"] = shelf.IsOwn(d.Id)
                }));
            else
                List(shelf, designs);
            return Exit.Done;
        });
    }

    private static void List(DesignShelf shelf, List<LabelDesign> designs)
    {
        foreach (var d in designs)
        {
            Console.WriteLine($"  {d.Id,-24}{d.Width.Millimetres,6:0.#} x {d.Height.Millimetres,-5:0.#} mm  {d.Name}{(d.With.IsEmpty ? "" : $"; goes with {string.Join(", ", d.With)}")}{(shelf.IsOwn(d.Id) ? "  (your own)" : "")}");
        }
        Console.WriteLine();
        Console.WriteLine(
            $"An arrangement may follow ({string.Join(", ", ArrangementFile.Known)}) and a pair of types: --design "
                + $"bar-2x4+medallion+soft");
        Console.WriteLine(
            $"A style alone ({string.Join(", ", DesignStyle.Known)}), light or dark, is the design's plain setting: --design "
                + $"bar-2x4+bookish+dark");
    }
}
