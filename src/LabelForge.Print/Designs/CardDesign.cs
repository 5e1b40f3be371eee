namespace LabelForge.Print.Designs;

/// <summary>Cards for a table, laid out as labels are: tags, signs, cards of ingredients. Sizes
/// and proportions are common practice.</summary>
public static class CardDesign
{
    /// <summary>The ids of the cards.</summary>
    public static IReadOnlyList<string> Known => Templates.Ids("cards");

    /// <summary>A card.</summary>
    /// <exception cref="InputException">There is none of that id.</exception>
    public static LabelDesign Load(string id) => Known.Contains(id)
        ? DesignFile.Read(Templates.Tree($"cards/{id}.yaml"), DesignLook.Of(id), null)
        : throw Templates.Unknown("card", id, Known);
}
