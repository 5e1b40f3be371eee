namespace LabelForge.Recipes.Files;

/// <summary>Names that one widely used system keeps for devices: a file called so cannot be opened there, whatever its ending.</summary>
/// <remarks>Microsoft, Naming Files, Paths, and Namespaces: CON, PRN, AUX, NUL, COM0 to COM9, LPT0 to LPT9 (from memory).</remarks>
public static class DeviceNames
{
    /// <summary>Whether a file's name, its ending left off, is kept for a device; letter case does not count.</summary>
    public static bool Holds(string name) => name.ToUpperInvariant() switch
    {
        "CON" or "PRN" or "AUX" or "NUL" => true,
        ['C', 'O', 'M', >= '0' and <= '9'] or ['L', 'P', 'T', >= '0' and <= '9'] => true,
        _ => false,
    };
}
