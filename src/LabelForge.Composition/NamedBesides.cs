namespace LabelForge.Composition;

/// <summary>
/// What a declaration names besides the material that it is a part of, such as an allergen of a fragrance: it counts with
/// its share where its place is decided, and adds no weight to the product.
/// </summary>
/// <param name="Name">The name it goes by, the same as that of an ingredient where it is one too.</param>
/// <param name="Material">The material that holds it.</param>
/// <param name="ShareOfProduct">The material's share of the charged batch, a fraction.</param>
/// <param name="Low">The least that the material can hold of it, a fraction.</param>
/// <param name="High">The most.</param>
public sealed record NamedBesides(string Name, string Material, decimal ShareOfProduct, decimal Low, decimal High);
