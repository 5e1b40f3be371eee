namespace LabelForge.Print.Drawing;

/// <summary>A symbol at its place, without its quiet zones: points from the label's top left corner, down.</summary>
/// <param name="Picture">Its modules.</param>
/// <param name="X">Its left edge.</param>
/// <param name="Y">Its top edge.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="Quarters">How many quarters it is turned to the left, 0 to 3.</param>
public sealed record PlacedSymbol(SymbolPicture Picture, double X, double Y, double Width, double Height, int Quarters);
