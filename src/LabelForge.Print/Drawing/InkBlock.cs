using System.Collections.Immutable;
using LabelForge.Measures;

namespace LabelForge.Print.Drawing;

public sealed record InkBlock(Length Width, Length Height, ImmutableArray<InkRectangle> Bars, string? Caption);

public readonly record struct InkRectangle(decimal XMm, decimal YMm, decimal WidthMm, decimal HeightMm);
