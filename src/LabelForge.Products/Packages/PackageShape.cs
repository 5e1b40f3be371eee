namespace LabelForge.Quantities;

/// <summary>The shape of a package, which decides what its principal display panel and its surface for labels are.</summary>
public enum PackageShape
{
    /// <summary>A bar or a box: width, height and depth; the side of width by height faces the buyer.</summary>
    Box,

    /// <summary>A tube, such as a lip balm's: diameter, and the height that a label can cover.</summary>
    Tube,

    /// <summary>A jar: diameter, and the height of its straight wall. The lid can bear a label.</summary>
    Jar,

    /// <summary>A bottle: diameter, and the height of its straight wall. Shoulder and neck are left out (21 CFR 701.10).</summary>
    Bottle,

    /// <summary>A flat round tin: diameter and height. Its lid faces the buyer.</summary>
    Tin,

    /// <summary>A flat bag: width and height.</summary>
    Bag,

    /// <summary>A card or a hang tag: width and height, two sides.</summary>
    Card,
}
